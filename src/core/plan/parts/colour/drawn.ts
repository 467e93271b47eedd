import type { Region } from '../../../form/index.ts';
import type { Job, JobLayer } from '../../../job/index.ts';
import { paletteOf, type Codes } from '../../../print/index.ts';
import type { Memory } from '../../memory.ts';
import type { PlannedLayer, PlannedPaper } from '../../planned.ts';
import { depositOfRun, type PlannedPress } from '../press/press.ts';
import { idealPrints } from '../cut/stencils.ts';
import { inksOf, type FoundInks } from './inks.ts';
import { bitsOf, layTheInks, printedPot, type RunLayer } from './let-down.ts';
import { coloursOn, inkSwatch, swatchOf } from './papers.ts';
import { codesOf } from './proof.ts';
import { shapeOf } from './recolour.ts';

/** A run as it is drawn: no bridge, no island, and no ridge of its stencil is known yet. */
export interface DrawnLayer extends Pick<PlannedLayer, 'id' | 'name' | 'run' | 'bit' | 'inkId' | 'strength' | 'filmTimes' | 'swatch'> {
  readonly prints: Region;
}

/** The print as it is drawn, before any stencil is made: what can be shown first. */
export interface Drawn {
  readonly job: Job;
  readonly codes: Codes;
  readonly layers: readonly DrawnLayer[];
  /** Bare papers only. */
  readonly papers: readonly Pick<PlannedPaper, 'id' | 'name' | 'swatch' | 'palette' | 'progressive'>[];
  readonly wetMicrons: number;
}

/** What only the whole Plan can show: tones, colours learned from proofs, a first paper that is printed already. */
const needsWhole = (job: Job, layers: readonly JobLayer[]): boolean =>
  layers.length === 0 || job.proofReadings.length > 0 || job.papers.length === 0 || !!job.papers[0].printed || layers.some((l) => l.tone);

/** See `Planner.drawn`. */
export function drawPrint(
  job: Job,
  layers: readonly JobLayer[],
  cuts: ReadonlyMap<string, Region>,
  press: PlannedPress,
  memory: Memory,
): Drawn | null {
  if (needsWhole(job, layers)) return null;
  const bitOf = bitsOf(layers);
  const { wetMicrons } = press.deposit;
  const runs = layers.map((layer) => ({
    layer: { ...layer, filmTimes: depositOfRun(press, layer.id).wetMicrons / wetMicrons },
    bit: bitOf.get(layer.id)!,
    prints: idealPrints(cuts.get(layer.cut)!, layer.side, job.image),
  }));
  const codes = codesOf(job.image, runs, memory);
  return coloured(job, codes, runs, inksOf(job, wetMicrons, memory), wetMicrons);
}

/** The same in the colours of a changed job; null when more has changed than ink, strength, base or order. */
export function recolourDrawn(drawn: Drawn, job: Job, memory: Memory): Drawn | null {
  const printing = job.layers.filter((l) => !l.off);
  if (shapeOf(job) !== shapeOf(drawn.job) || printing.length === 0 || needsWhole(job, printing)) return null;
  const runs = printing.flatMap((layer) => {
    const known = drawn.layers.find((l) => l.id === layer.id);
    return known ? [{ layer: { ...layer, filmTimes: known.filmTimes }, bit: known.bit, prints: known.prints }] : [];
  });
  // A run that was out of the print has left nothing to take it in with.
  if (runs.length < printing.length) return null;
  return coloured(job, drawn.codes, runs, inksOf(job, drawn.wetMicrons, memory), drawn.wetMicrons);
}

interface Run {
  readonly layer: RunLayer & JobLayer;
  readonly bit: number;
  readonly prints: Region;
}

function coloured(job: Job, codes: Codes, runs: readonly Run[], inks: FoundInks, wetMicrons: number): Drawn | null {
  const bitOf = new Map(runs.map((r) => [r.layer.id, r.bit]));
  const printed = layTheInks(
    runs.map((r) => r.layer),
    inks,
  ).map((one) => ({ ...one, bit: bitOf.get(one.id)! }));
  const bits = printed.map((l) => l.bit);
  const first = job.papers.map((p) => inks.papers.get(p.id)).find((s) => s !== undefined);
  const papers = job.papers.flatMap((paper): Drawn['papers'] => {
    const spectrum = inks.papers.get(paper.id);
    const colours = paper.printed ? null : coloursOn(paper, job, inks, printed, null)?.colours;
    if (!spectrum || !colours) return [];
    const progressive = printed.map((_, i) => paletteOf(colours.rgb, bits, i + 1));
    return [{ id: paper.id, name: paper.name, swatch: swatchOf(spectrum), palette: paletteOf(colours.rgb, bits), progressive }];
  });
  if (papers.length === 0 || papers[0].id !== job.papers[0].id) return null;
  const layers = runs.map(({ layer, bit, prints }, i): DrawnLayer => {
    const pot = printedPot(layer, inks);
    const { id, name, ink, strength, filmTimes } = layer;
    return {
      id,
      name,
      run: i + 1,
      bit,
      inkId: ink,
      strength,
      filmTimes,
      swatch: pot && first ? inkSwatch(pot, first, inks) : null,
      prints,
    };
  });
  return { job, codes, layers, papers, wetMicrons };
}
