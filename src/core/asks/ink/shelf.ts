import { deltaE00 } from '../../colour/index.ts';
import {
  emptyShelf,
  lotInUse,
  mergeShelves,
  type InkShelf,
  type Reading,
  type SheetRead,
  type ShelfInk,
  type ShelfLot,
} from '../../ink/index.ts';
import { settleProblems, type Job, type JobInk, type JobReading } from '../../job/index.ts';
import { fail, problem, type Problem } from '../../problem.ts';
import { list, name as asName, say } from '../../../words/say.ts';

/** A reading as a job keeps it. */
export function jobReading(reading: Reading): JobReading {
  return structuredCopy(reading) as JobReading;
}

const structuredCopy = (reading: Reading): Reading =>
  reading.kind === 'spectrum'
    ? { ...reading, values: [...reading.values] }
    : reading.kind === 'xyz'
      ? { ...reading, xyz: [...reading.xyz] }
      : { ...reading, lab: [...reading.lab] };

/** A job's ink as a lot of the studio's shelf; null for a mix, which is made of lots and is none. */
export function lotOf(ink: JobInk, lot: string, date?: string): ShelfLot | null {
  const more = {
    lot,
    ...(date === undefined ? {} : { date }),
    ...(ink.known === undefined ? {} : { known: ink.known }),
    ...(ink.drawdownMicrons === undefined ? {} : { drawdownMicrons: ink.drawdownMicrons }),
    ...(ink.leftGrams === undefined ? {} : { gramsLeft: ink.leftGrams }),
  };
  switch (ink.from) {
    case 'one-ground':
      return { ...more, source: { from: ink.from, ground: ink.ground, over: ink.over } };
    case 'two-grounds':
      return {
        ...more,
        source: { from: ink.from, white: ink.white, overWhite: ink.overWhite, black: ink.black, overBlack: ink.overBlack },
      };
    case 'ladder':
      return { ...more, source: { from: ink.from, ground: ink.ground, steps: ink.steps } };
    case 'clear':
      return { ...more, source: { from: ink.from } };
    case 'mix':
      return null;
  }
}

/** A shelf's ink as a job takes it: the lot in use, or the one named. */
export function inkFromShelf(ink: ShelfInk, lotName?: string): JobInk {
  const lot = lotName === undefined ? lotInUse(ink) : ink.lots.find((l) => l.lot === lotName);
  if (!lot) {
    const lots = list(
      ink.lots.map((l) => asName(l.lot)),
      'comma',
    );
    fail(
      'no-such-lot',
      say('where.inkOnShelf', { ink: asName(ink.name) }),
      say('asks.noSuchLot', { lot: asName(lotName ?? '') }),
      say('asks.useOneOf', { all: lots }),
    );
  }
  return {
    id: ink.id,
    name: ink.name,
    role: ink.role,
    densityGPerMl: ink.densityGPerMl,
    ...(lot.known === undefined ? {} : { known: lot.known }),
    ...(ink.note === undefined ? {} : { note: ink.note }),
    ...(lot.drawdownMicrons === undefined ? {} : { drawdownMicrons: lot.drawdownMicrons }),
    ...lot.source,
  } as JobInk;
}

/** The studio's shelf with a job's inks and papers put on it. Mixes stay in the job, which a note says. */
export function shelfWithJob(
  shelf: InkShelf | null,
  job: Pick<Job, 'inks' | 'papers' | 'title'>,
  date?: string,
): { readonly shelf: InkShelf; readonly problems: readonly Problem[] } {
  const mixes = job.inks.filter((k) => k.from === 'mix');
  const of: InkShelf = {
    ...emptyShelf(),
    inks: job.inks.flatMap((ink): ShelfInk[] => {
      const known = shelf?.inks.find((k) => k.id === ink.id && k.name === ink.name && k.role === ink.role);
      const lot = lotOf(ink, job.title.slice(0, 100), date);
      if (!lot) return [];
      // What the shelf's newest lot says already is no new lot; a job's title twice gets a number.
      if (known?.lots.some((l) => JSON.stringify(l.source) === JSON.stringify(lot.source))) return [];
      let name = lot.lot;
      for (let n = 2; known?.lots.some((l) => l.lot === name); n++) name = `${lot.lot.slice(0, 94)} ${n}`;
      return [{ id: ink.id, name: ink.name, role: ink.role, densityGPerMl: ink.densityGPerMl, lots: [{ ...lot, lot: name }] }];
    }),
    papers: job.papers.filter((p) => !p.printed).map((p) => ({ id: p.id, name: p.name, reading: p.reading })),
  };
  const merged = mergeShelves(shelf ?? emptyShelf(), of);
  return {
    shelf: withLeft(merged.shelf, job),
    problems: [
      ...merged.problems,
      ...settleProblems(
        mixes.map((k) => problem('note', 'mix-stays', `inks[#${k.id}]`, say('asks.mixStays'), say('asks.partsOnShelf'))),
        job,
      ),
    ],
  };
}

/** What the job says is left of a lot is what is left of it. */
function withLeft(shelf: InkShelf, job: Pick<Job, 'inks'>): InkShelf {
  const leftOf = (lot: ShelfLot): number | undefined => {
    const source = JSON.stringify(lot.source);
    return job.inks.find((ink) => ink.leftGrams !== undefined && JSON.stringify(lotOf(ink, '')?.source) === source)?.leftGrams;
  };
  return {
    ...shelf,
    inks: shelf.inks.map((ink) => ({ ...ink, lots: ink.lots.map((lot) => ({ ...lot, gramsLeft: leftOf(lot) ?? lot.gramsLeft })) })),
  };
}

/** ΔE00 from the bare paper below which a box counts as empty: photographs of paper differ by less (common practice). */
const bareWithin = 3;

/**
 * An ink from a photographed drawdown sheet: a ladder when several strengths were drawn down over white, else over both
 * grounds. Boxes that still look like the bare sheet are left out. Throws `ProblemError` when nothing was drawn down.
 */
export function inkFromSheet(read: SheetRead, name: { readonly id: string; readonly name: string }, fileName: string): JobInk {
  const drawn = read.boxes.filter((box) => box.over === 'white' && deltaE00(box.reading.lab, read.white) > bareWithin);
  if (drawn.length === 0)
    fail('nothing-drawn-down', say('where.file', { file: asName(fileName) }), say('asks.nothingDrawnDown'), say('asks.drawDown'));
  const ground: Reading = { kind: 'photo', lab: read.white, sigma: drawn[0].reading.sigma };
  const head = { ...name, role: 'ink' as const, densityGPerMl: 1.1 };
  const full = drawn.find((box) => box.share === 1);
  const black = full && read.boxes.find((box) => box.over === 'black' && box.share === 1);
  if (drawn.length === 1 && full && black) {
    return {
      ...head,
      from: 'two-grounds',
      white: ground,
      overWhite: full.reading,
      black: read.black.reading,
      overBlack: black.reading,
    } as JobInk;
  }
  return {
    ...head,
    from: 'ladder',
    ground,
    steps: drawn.map((box) => ({ share: box.share, over: box.reading })).sort((a, b) => b.share - a.share),
  } as JobInk;
}
