import { describe, expect, test } from 'vitest';
import { inEnglish, refusalOf, refusedBy } from '../../../test/said.ts';
import { tellPlace } from '../../words/index.ts';
import { parseJob, type Job } from '../job/index.ts';
import { askComplaint, askInks, askPot, askRecipe, inkFromShelf, partsOfLayer, shelfWithJob, wantedOfPot } from './index.ts';

const lab = (l: number, a: number, b: number): { kind: 'lab'; lab: [number, number, number] } => ({ kind: 'lab', lab: [l, a, b] });
/** Two runs: one decided, one open. */
const job: Job = parseJob({
  schemaVersion: 1,
  title: 'Tide',
  image: { widthMm: 100, heightMm: 100 },
  inks: [
    { id: 'kelp', name: 'Kelp', from: 'one-ground', ground: lab(94, 0, 3), over: lab(50, -20, 35) },
    { id: 'base', name: 'Clear base', from: 'clear', role: 'transparent-base' },
    { id: 'pond', name: 'Pond', from: 'mix', parts: [{ ink: 'kelp', parts: 1 }] },
  ],
  papers: [{ id: 'smooth', name: 'Smooth white', widthMm: 200, heightMm: 200, count: 4, reading: lab(94, 0, 3) }],
  layers: [
    { id: 'water', name: 'Water', cut: 'none', side: 'window', ink: 'kelp', strength: 0.2, base: 'base' },
    { id: 'sky', name: 'Sky', cut: 'none', side: 'window', ink: null },
  ],
});

describe('a question that has no answer', () => {
  test('says which run is open, by its name and number, and leads there', () => {
    const [open] = refusedBy(() => partsOfLayer(job, 'Sky'));
    expect(open).toMatchObject({ code: 'layer-open', path: 'layers[1].ink', lead: { station: 'laydown', id: 'sky' } });
    expect(tellPlace(open)).toBe('the ink of run 2 (Sky)');
    expect(tellPlace(refusedBy(() => wantedOfPot(job, '2'))[0])).toBe('the ink of run 2 (Sky)');
    expect(refusedBy(() => askComplaint(job, 'sky', 'too weak'))[0].code).toBe('layer-open');
  });
  test('names what there is instead of a layer, paper or lot that there isn’t', () => {
    expect(refusalOf(() => partsOfLayer(job, 'foam'))).toBe('the layers: The job has no layer “foam”. Use one of: water, sky.');
    expect(refusalOf(() => askRecipe(job, { wanted: [50, 0, 0], paperId: 'rag' }))).toBe(
      'the papers: The job has no paper “rag” that was read. Use one of: smooth.',
    );
    expect(refusalOf(() => askRecipe({ ...job, papers: [] }, { wanted: [50, 0, 0] }))).toContain('Read a paper first.');
    const { shelf } = shelfWithJob(null, job);
    expect(refusalOf(() => inkFromShelf(shelf.inks[0], 'May'))).toBe(
      'the ink “Kelp” on the shelf: The shelf has no lot “May” of this ink. Use one of: Tide.',
    );
  });
  test('an ink that the pot holds and the job has not, a reading out of range: both say where', () => {
    const pot = { layer: 'water', contents: [{ id: 'mauve', grams: 3 }], rounds: [{ added: [], reading: lab(60, -10, 20) }] };
    expect(refusalOf(() => askPot(job, pot))).toBe(
      'the ink of run 1 (Water): “mauve” is in the pot but not on the shelf. Add its reading to the shelf.',
    );
    expect(refusalOf(() => askPot(job, { ...pot, rounds: [...pot.rounds, { added: [], reading: lab(400, 0, 0) }] }))).toMatch(
      /^drawdown 2: /,
    );
  });
});

test('more retarder than usual is warned of at the recipe; each ink carries the problems of its own readings only', () => {
  const { problems } = askRecipe(job, { wanted: [60, -15, 30], retarderShare: 0.07 });
  expect(problems.map((p) => `${tellPlace(p)}: ${inEnglish(p.message)}`)).toEqual([
    'the recipe: 7\u00a0% of retarder is more than the usual 2\u00a0% to 5\u00a0%.',
  ]);
  const wrong = { ...job, inks: job.inks.map((k) => (k.id === 'kelp' ? { ...k, over: lab(400, 0, 0) } : k)) } as Job;
  expect(askInks(wrong).map((sheet) => [sheet.id, sheet.problems.length])).toEqual([
    ['kelp', 1],
    ['base', 0],
    ['pond', 0],
  ]);
});

test('a mix put on the shelf stays in the job, and a note names it', () => {
  expect(shelfWithJob(null, job).problems.map((p) => [p.code, tellPlace(p)])).toEqual([['mix-stays', 'the mix “Pond”']]);
});
