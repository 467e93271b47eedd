import { readFileSync } from 'node:fs';
import { askTones, type ToneField } from '../../src/core/asks/index.ts';
import { deltaE00, type Lab } from '../../src/core/colour/index.ts';
import { parseJob, type Job } from '../../src/core/job/index.ts';
import { plan, type PlannedTones } from '../../src/core/plan/index.ts';

/** Published charts of tones as a printmaker's jobs: solids and wedges of single inks typed in as read, all else foreseen. Sources stand in the file. */
type Row = readonly [c: number, m: number, y: number, k: number, l: number, a: number, b: number];
const { sets } = JSON.parse(readFileSync(new URL('data/halftone-sets.json', import.meta.url), 'utf8')) as {
  sets: Readonly<Record<string, readonly Row[]>>;
};
/** What the model's few constants were chosen on, and what they are judged on. */
export const tunedOn = ['FOGRA39L', 'FOGRA29L', 'TR003'] as const;
export const leftOut = Object.keys(sets).filter((name) => !(tunedOn as readonly string[]).includes(name));

interface Field {
  readonly covers: Readonly<Record<string, number>>;
  readonly lab: Lab;
}

/** Fields of a set that print in these inks alone, black first as on the press. */
export function fieldsOf(set: string, inks: string): Field[] {
  const ids = [...'KCMY'].filter((i) => inks.includes(i));
  return sets[set]
    .filter((row) => [...'CMYK'].every((i, at) => row[at] === 0 || inks.includes(i)))
    .map((row) => ({
      covers: Object.fromEntries(ids.map((i) => [i.toLowerCase(), row['CMYK'.indexOf(i)] / 100])),
      lab: [row[4], row[5], row[6]] as Lab,
    }));
}
const printing = (field: Field): [string, number][] => Object.entries(field.covers).filter(([, c]) => c > 0);
const solid = (field: Field): boolean => Object.values(field.covers).every((c) => c === 0 || c === 1);

export function toneJob(set: string, inks: string, overprints: 'measured' | 'foreseen', wedges = true): Job {
  const fields = fieldsOf(set, inks);
  const white = fields.find((f) => printing(f).length === 0)!.lab;
  const ids = Object.keys(fields[0].covers);
  const read = fields.filter((f) => {
    const n = printing(f).length;
    return n === 1 ? wedges && !solid(f) : n > 1 && solid(f) && overprints === 'measured';
  });
  return parseJob({
    schemaVersion: 1,
    title: set,
    image: { widthMm: 20, heightMm: 20 },
    layers: ids.map((id) => ({ id, name: id, ink: id, tone: { share: 0.5 } })),
    inks: ids.map((id) => ({
      id,
      name: id,
      from: 'one-ground',
      ground: { kind: 'lab', lab: white },
      over: { kind: 'lab', lab: fields.find((f) => printing(f).length === 1 && f.covers[id] === 1)!.lab },
    })),
    papers: [{ id: 'paper', name: 'Paper', reading: { kind: 'lab', lab: white }, widthMm: 100, heightMm: 100, count: 3 }],
    proofReadings: read.map((f) => ({
      paper: 'paper',
      layers: printing(f).map(([id]) => id),
      ...(solid(f) ? {} : { coverages: printing(f).map(([, c]) => c) }),
      reading: { kind: 'lab', lab: f.lab },
    })),
  });
}

export interface ToneTrial {
  readonly set: string;
  readonly mean: number;
  readonly p95: number;
  readonly within: number;
  readonly band: number;
  readonly model: PlannedTones['model'];
  readonly fields: readonly ToneField[];
}

/** Every tone of two inks and more, against what was measured. */
export function tried(set: string, inks: string, overprints: 'measured' | 'foreseen', job = toneJob(set, inks, overprints)): ToneTrial {
  const paper = plan({ job, attachments: new Map() }).papers[0];
  const test = fieldsOf(set, inks).filter((f) => printing(f).length > 1 && !solid(f));
  const fields = askTones(paper, { fields: test, problems: [] })!;
  const off = fields.map((f, i) => deltaE00(f.lab, test[i].lab));
  const sorted = [...off].sort((a, b) => a - b);
  const mean = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0) / of.length;
  return {
    set,
    mean: mean(off),
    p95: sorted[Math.floor(off.length * 0.95)],
    within: mean(off.map((d, i) => (d <= fields[i].band ? 1 : 0))),
    band: mean(fields.map((f) => f.band)),
    model: paper.tones!.model,
    fields,
  };
}
