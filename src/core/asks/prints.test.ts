import { describe, expect, test } from 'vitest';
import { markDone, parseJob, type JobBundle } from '../job/index.ts';
import { countLogName } from '../plan/index.ts';
import { logLine } from '../edition/index.ts';
import { copyOfPrint, nextPrint, stageOf } from './prints.ts';

const job = parseJob({
  schemaVersion: 1,
  title: 'Heron',
  image: { widthMm: 10, heightMm: 10 },
  forms: [{ id: 'bird', name: 'Bird', drawing: 'bird.svg' }],
  cuts: [{ id: 'bird', name: 'Bird', parts: [{ form: 'bird', xMm: 5, yMm: 5 }] }],
  layers: [{ id: 'body', name: 'Body', cut: 'bird', side: 'window', ink: null }],
  papers: [{ id: 'sheet', name: 'Sheet', reading: { kind: 'lab', lab: [95, 0, 2] }, widthMm: 20, heightMm: 20, count: 3 }],
});
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const drawn = new Map([['bird.svg', bytes('<svg/>')]]);
const pull = { kind: 'pull', run: 'body', sheet: 'A1', at: '2025-01-01T10:00:00Z' } as const;
const counted: JobBundle = { job: markDone(job, 'body', 'cut'), attachments: new Map([...drawn, [countLogName, bytes(logLine(1, pull))]]) };

describe('prints of a studio', () => {
  test('planned, cut, printing, signed: by what was done last', () => {
    expect(stageOf({ job, attachments: drawn })).toBe('planned');
    expect(stageOf({ job: counted.job, attachments: drawn })).toBe('cut');
    expect(stageOf(counted)).toBe('printing');
    expect(stageOf({ job: markDone(job, 'body', 'pulled'), attachments: drawn })).toBe('printing');
    const record = { signature: 'pencil, below right' };
    expect(stageOf({ ...counted, job: { ...counted.job, edition: { ...job.edition, record } } })).toBe('signed');
  });

  test('a count that is damaged, or taken back before the first pull, is no printing', () => {
    const logged = (log: string): JobBundle => ({ job, attachments: new Map([[countLogName, bytes(log)]]) });
    expect(stageOf(logged('{nonsense\n'))).toBe('planned');
    expect(stageOf(logged(logLine(1, pull) + logLine(2, { ...pull, kind: 'undo' })))).toBe('planned');
  });

  test('a copy is the same print with nothing of it done', () => {
    const copy = copyOfPrint(counted, 'Heron, second state');
    expect(stageOf(copy)).toBe('planned');
    expect([...copy.attachments.keys()]).toEqual(['bird.svg']);
    expect(copy.job).toEqual({ ...job, title: 'Heron, second state' });
    const named = { ...counted, job: { ...counted.job, print: 'a1' } };
    for (const make of [copyOfPrint, nextPrint]) expect(make(named, 'Heron, second state').job).not.toHaveProperty('print');
    expect(stageOf(counted)).toBe('printing');
  });

  test('the next print finds the studio as it is, and nothing drawn', () => {
    const next = nextPrint(counted, 'Crane');
    expect(next.job.papers).toBe(counted.job.papers);
    expect([next.job.forms, next.job.cuts, next.job.layers]).toEqual([[], [], []]);
    expect(next.attachments.size).toBe(0);
    expect(parseJob(JSON.parse(JSON.stringify(next.job)))).toEqual(next.job);
  });
});
