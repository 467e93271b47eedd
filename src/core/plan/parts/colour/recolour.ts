import { overlapIndex, paletteOf, quickNodes } from '../../../print/index.ts';
import { tonesOn } from '../tone/models.ts';
import { filmOf } from '../../../ink/index.ts';
import type { Job, JobLayer } from '../../../job/index.ts';
import { inksOf } from './inks.ts';
import { learnOnPaper } from './learning.ts';
import { printedPot, type PrintedLayer } from './let-down.ts';
import { areasOf } from './proof.ts';
import { lightsOn } from './lights.ts';
import type { Memory } from '../../memory.ts';
import { codeOf, colourOf, coloursOn, layersOf, litAsk, inkSwatch, shownPrint } from './papers.ts';
import { overPicture } from './over-picture.ts';
import type { PlannedLayer, PlannedOverlap, PlannedPaper } from '../../planned.ts';
import type { Plan } from '../../types.ts';

/** What a change of inks, strengths or order does to the proof, before the whole Plan is made. */
export interface Recoloured {
  readonly layers: readonly PlannedLayer[];
  readonly paper: PlannedPaper;
}

/** What is read of the Plan made last. */
export type RecolourBase = Pick<Plan, 'job' | 'codes' | 'layers' | 'papers'> & {
  readonly press: { readonly deposit: Pick<Plan['press']['deposit'], 'wetMicrons'> };
};

const shapes = new WeakMap<Job, string>();

/** All of a job that a new colour or order leaves as it is, or a run that is left out or taken in. */
export function shapeOf(job: Job): string {
  let shape = shapes.get(job);
  if (shape === undefined) {
    const layers = job.layers.map(
      (layer): JobLayer => ({ ...layer, ink: null, strength: 1, base: undefined, bases: undefined, note: undefined, off: false }),
    );
    shape = JSON.stringify({
      ...job,
      inks: [],
      proofReadings: [],
      wanted: [],
      title: '',
      layers: layers.sort((a, b) => (a.id < b.id ? -1 : 1)),
    });
    shapes.set(job, shape);
  }
  return shape;
}

/** A run that was out of the print when the Plan was made has left no stencil to take it in with. */
function takesIn(last: RecolourBase, job: Job): boolean {
  return job.layers.some((layer) => !layer.off && last.job.layers.find((l) => l.id === layer.id)?.off);
}

/**
 * See `Planner.recolour`. The same functions as the Plan's own make the colours, so they are the Plan's to the last digit; over an
 * earlier print they are interpolated from fewer ground colours (1 of 255 levels off on average) until the Plan is made.
 * @param areas256 area of each of the 256 codes, mm²
 */
export function recolour(
  last: RecolourBase,
  job: Job,
  paperId: string,
  memory: Memory,
  areas256: (codes: Plan['codes']) => Float64Array = (codes) => areasOf(codes, memory),
): Recoloured | null {
  const at = job.papers.findIndex((p) => p.id === paperId);
  const before = last.papers.find((p) => p.id === paperId);
  if (at < 0 || !before || shapeOf(job) !== shapeOf(last.job) || takesIn(last, job)) return null;
  const { wetMicrons } = last.press.deposit;
  const found = inksOf(job, wetMicrons, memory);
  const first = job.papers.map((p) => found.papers.get(p.id)).find((s) => s !== undefined);
  const planned = job.layers.flatMap((layer) => {
    const known = layer.off ? undefined : last.layers.find((l) => l.id === layer.id);
    const run = known && { ...layer, filmTimes: known.filmTimes };
    return run ? [{ layer: run, known, pot: printedPot(run, found) }] : [];
  });
  const printed = planned.flatMap(({ layer, known, pot }): PrintedLayer[] =>
    pot ? [{ id: layer.id, bit: known.bit, pot, film: filmOf(pot), sigma: found.inkSigmas.get(layer.ink ?? '') ?? 1, moves: false }] : [],
  );
  const learned =
    job.proofReadings.length === 0
      ? null
      : learnOnPaper(
          job,
          planned.map((p) => p.layer),
          found,
          paperId,
        );
  const coloured = coloursOn(job.papers[at], job, found, printed, learned);
  if (!coloured) return null;

  const { colours } = coloured;
  const bits = printed.map((l) => l.bit);
  const areas = areasByRow(areas256(last.codes), bits);
  const overlaps = overlapsNow(before.overlaps, printed, coloured, areas);
  const lit = litAsk(job.papers[at], job, found, printed, learned, colours.lab, areas);
  const shown = before.overPicture && shownPrint(found, printed, learned);
  const over = before.overPicture && shown && overPicture(before.overPicture.ground, shown, printed, areas, quickNodes);
  return {
    layers: planned.map(({ layer, known, pot }, i) => ({
      ...known,
      name: layer.name,
      run: i + 1,
      inkId: layer.ink,
      strength: layer.strength,
      swatch: pot && first ? inkSwatch(pot, first, found) : null,
    })),
    paper: {
      ...before,
      overlaps,
      lights: lightsOn(lit).lights,
      palette: paletteOf(colours.rgb, bits),
      progressive: printed.map((_, i) => paletteOf(colours.rgb, bits, i + 1)),
      overPicture: over,
      tones: before.tones && tonesNow(last, job, at, found, printed, learned, colours.lab, overlaps),
    },
  };
}

/** Tones of the runs that carry them, with the bands that the overlaps have now. */
function tonesNow(
  last: RecolourBase,
  job: Job,
  at: number,
  found: Parameters<typeof tonesOn>[2],
  printed: readonly PrintedLayer[],
  learned: Parameters<typeof tonesOn>[5],
  lab: Float64Array,
  overlaps: readonly PlannedOverlap[],
): PlannedPaper['tones'] {
  const screens = new Map(last.layers.flatMap((l) => (l.tone ? [[l.id, l.tone]] : [])));
  const widest = Math.max(...overlaps.map((o) => o.band));
  const bands = Array.from(
    { length: 1 << printed.length },
    (_, row) => overlaps.find((o) => o.code === codeOf(row, printed))?.band ?? widest,
  );
  return tonesOn(job.papers[at], job, found, printed, screens, learned, lab, bands);
}

/** All overlaps that cover something, in their new colours; their bands as they were. */
function overlapsNow(
  before: readonly PlannedOverlap[],
  printed: readonly PrintedLayer[],
  { colours, measured }: NonNullable<ReturnType<typeof coloursOn>>,
  areas: Float64Array,
): PlannedOverlap[] {
  const widest = Math.max(...before.map((o) => o.band));
  const now = Array.from(areas, (areaMm2, row): PlannedOverlap => {
    const code = codeOf(row, printed);
    const was = before.find((o) => o.code === code);
    return {
      ...colourOf(colours, row),
      code,
      layers: layersOf(row, printed),
      areaMm2,
      measured: measured.has(row),
      band: was?.band ?? widest,
      possible: was?.possible ?? [],
    };
  });
  return now.filter((o, row) => row === 0 || o.areaMm2 > 0);
}

/** Areas of the codes, mm² → of the overlaps of these bits. */
function areasByRow(ofCodes: Float64Array, bits: readonly number[]): Float64Array {
  const areas = new Float64Array(1 << bits.length);
  ofCodes.forEach((area, code) => {
    areas[overlapIndex(code, bits)] += area;
  });
  return areas;
}
