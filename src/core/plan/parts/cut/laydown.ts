import { smoothestSpectrum, xyzFromLab, type Spectrum } from '../../../colour/index.ts';
import { common, offsetRegion, rectangle, regionArea, simplify, takeAway, type Region } from '../../../form/index.ts';
import { stackReflectance } from '../../../ink/index.ts';
import type { Job, JobLayer } from '../../../job/index.ts';
import { edgeRidge, ridgeOver, type EdgeRidge, type RidgeOver } from '../../../press/index.ts';
import type { Problem } from '../../../problem.ts';
import { ridgeWarnings, type Stencil } from '../../../stencil/index.ts';
import type { Memory } from '../../memory.ts';
import type { PlannedCut, PlannedInk, PlannedLayer, PlannedTone } from '../../planned.ts';
import { planCut, stencilGroups } from './cut-pairs.ts';
import type { PlannedEdition, RunMaterial } from '../press/edition.ts';
import type { FoundInks } from '../colour/inks.ts';
import { bitsOf, filmOfLayer, type PrintedLayer, type RunLayer } from '../colour/let-down.ts';
import { planMix } from '../colour/mix.ts';
import { inkSwatch, swatchOf } from '../colour/papers.ts';
import { depositOfRun, type PlannedPress } from '../press/press.ts';
import { say } from '../../../../words/say.ts';
import { codeColours } from '../colour/proof.ts';
import { kerfOf, makeStencils, materialFor, materialsOf, writtenCut, type CodeColours, type CutLayer } from './stencils.ts';

/** Each layer's sheet, its bridges where they are least seen on the bare papers. Layers whose stencil can't be made are left out. */
export function cutTheStencils(
  job: Job,
  layers: readonly JobLayer[],
  laydown: readonly PrintedLayer[],
  cuts: ReadonlyMap<string, Region>,
  inks: FoundInks,
  memory: Memory,
  found: (problems: readonly Problem[]) => void,
): CutLayer[] {
  const bitOf = bitsOf(layers);
  const bare = job.papers.filter((p) => inks.papers.has(p.id) && !p.printed);
  const colours = bare.map((paper) => codeColours(inks.papers.get(paper.id)!, laydown, inks.surface));
  const tasks = layers.map((layer) => ({
    layer,
    bit: bitOf.get(layer.id)!,
    cut: spreadCut(cuts.get(layer.cut)!, layer, memory),
    material: materialFor(job, layer.cut),
    sheetMm: job.cuts.find((c) => c.id === layer.cut)?.sheetMm,
  }));
  const made = makeStencils(
    job,
    tasks.filter((t) => !t.layer.tone),
    colours,
    memory,
    materialsOf(job),
  );
  for (const one of made.values()) found(one.problems);
  return tasks.flatMap(({ layer, bit, cut, material, sheetMm }) => {
    const stencil = layer.tone ? exposedStencil(job, layer, cut, sheetMm, memory) : made.get(layer.id)?.stencil;
    if (!stencil) return [];
    const written = writtenCut(job, layer, stencil, material, memory);
    found(written.problems);
    return [{ layer, stencil, written, bit }];
  });
}

/** A screen that is exposed carries its stencil itself: nothing is cut, and nothing comes loose. */
function exposedStencil(
  job: Pick<Job, 'image' | 'stencilMarginMm'>,
  { id, side }: JobLayer,
  cut: Region,
  sheetMm: readonly [number, number] | undefined,
  memory: Memory,
): Stencil {
  const { image, stencilMarginMm: margin } = job;
  return memory.part(`exposed ${id}`, { side, cut, image, margin, sheetMm }, exposed);
}

interface ExposedReads {
  readonly side: Stencil['side'];
  readonly cut: Region;
  readonly image: Job['image'];
  readonly margin: number;
  readonly sheetMm: readonly [number, number] | undefined;
}

function exposed({ side, cut, image, margin, sheetMm }: ExposedReads): Stencil {
  const { widthMm, heightMm } = image;
  const whole = rectangle(0, 0, widthMm, heightMm);
  const [x, y] = sheetMm ? [(sheetMm[0] - widthMm) / 2, (sheetMm[1] - heightMm) / 2] : [margin, margin];
  const prints = side === 'window' ? common(cut, whole) : takeAway(whole, cut);
  return {
    side,
    sheet: { minX: -x, minY: -y, maxX: widthMm + x, maxY: heightMm + y },
    paper: takeAway(rectangle(-x, -y, widthMm + x, heightMm + y), prints),
    prints,
    islands: [],
    bridges: [],
    loosePieces: [],
    cutLines: { rings: [] },
    certificate: {
      holds: true,
      pieces: 1,
      leastNeckMm: 0,
      leastOpeningMm: 0,
      faults: [],
      mmPerPx: 0,
      method: say('halftone.exposed'),
    },
    knife: { metres: 0, corners: 0, pieces: 0, punched: [], minutes: 0, difficulty: 'easy' },
    effort: 0,
    problems: [],
  };
}

/** The colours of all codes on the first bare paper that was read; null without one. */
export function coloursOnPaper(job: Job, laydown: readonly PrintedLayer[], inks: FoundInks, memory: Memory): CodeColours | null {
  const paper = job.papers
    .filter((p) => !p.printed)
    .map((p) => inks.papers.get(p.id))
    .find((s) => s !== undefined);
  return paper ? memory.part('colours on paper', { paper, laydown, surface: inks.surface }, coloursFrom) : null;
}

const coloursFrom = (reads: { paper: Spectrum; laydown: readonly PrintedLayer[]; surface: FoundInks['surface'] }): CodeColours =>
  codeColours(reads.paper, reads.laydown, reads.surface);

/** A layer that is spread prints farther out on all sides: its window grows, or its piece shrinks. */
function spreadCut(cut: Region, layer: JobLayer, memory: Memory): Region {
  if (layer.spreadMm === 0) return cut;
  return memory.part(`spread ${layer.id}`, { cut, mm: layer.side === 'window' ? layer.spreadMm : -layer.spreadMm }, spread);
}

const spread = ({ cut, mm }: { readonly cut: Region; readonly mm: number }): Region => offsetRegion(cut, mm);

/** Later runs that print over the ridge along an earlier one's edges. */
export function ridgesOf(job: Job, stencils: readonly CutLayer[], memory: Memory): Problem[] {
  const cut = stencils.filter(({ layer }) => !layer.tone);
  const layers = cut.map(({ layer, stencil }) => ({
    id: layer.id,
    name: layer.name,
    prints: stencil.prints,
    material: materialFor(job, layer.cut),
  }));
  return memory.part('ridges', { layers }, findRidges);
}

const findRidges = ({ layers }: { readonly layers: Parameters<typeof ridgeWarnings>[0] }): Problem[] => [...ridgeWarnings(layers)];

/** Runs as they will be printed: film, grams, pulls, the swatch of their pot. */
export function planLayers(from: {
  readonly job: Job;
  readonly layers: readonly RunLayer[];
  readonly stencils: readonly CutLayer[];
  readonly inks: FoundInks;
  readonly press: PlannedPress;
  readonly edition: PlannedEdition;
  readonly areas: Float64Array;
  readonly tones: ReadonlyMap<string, PlannedTone>;
  readonly memory: Memory;
}): PlannedLayer[] {
  const { job, layers, inks, press, edition, areas, tones, memory } = from;
  const paper = firstPaper(job, inks);
  const retarderShare = edition.day?.openTime.retarderShare ?? 0;
  return from.stencils.map(({ layer, stencil, written, bit }, i): PlannedLayer => {
    const tone = tones.get(layer.id) ?? null;
    const imageMm2 = job.image.widthMm * job.image.heightMm;
    const printsMm2 = tone ? tone.meanOnPaper * imageMm2 : areaOfBit(areas, bit);
    const run = layers.findIndex((l) => l.id === layer.id);
    const pulls = edition.pullsOfRun[run] ?? 0;
    const filmTimes = layers[run]?.filmTimes ?? 1;
    const film = filmOfLayer({ ...layer, filmTimes }, inks);
    const deposit = depositOfRun(press, layer.id);
    const ridge = ridgeOfLayer(job, layer, stencil, press, memory);
    return {
      id: layer.id,
      name: layer.name,
      run: i + 1,
      bit,
      cutId: layer.cut,
      side: layer.side,
      stencil,
      tone,
      written,
      inkId: layer.ink,
      strength: layer.strength,
      printsMm2,
      coverage: printsMm2 / imageMm2,
      wetMicrons: deposit.wetMicrons,
      filmTimes,
      deposit: (layer.ink === null ? 1 : (inks.deposits.get(layer.ink) ?? 1)) * (deposit.wetMicrons / press.deposit.wetMicrons),
      swatch: film && swatchOf(stackReflectance(paper, [film], inks.surface)),
      mix: planMix(job, layer, { printsMm2, pulls, deposit, retarderShare, bladeMm: press.bladeMm, ridge }),
      sheetsThrough: pulls,
      changes: edition.wear[run]?.changes ?? [],
      ridge,
    };
  });
}

/** The first paper that was read; a usual white where none was. */
function firstPaper(job: Pick<Job, 'papers'>, inks: FoundInks): Spectrum {
  return job.papers.map((p) => inks.papers.get(p.id)).find((s) => s !== undefined) ?? smoothestSpectrum(xyzFromLab([95, 0, 0]));
}

function areaOfBit(areas: Float64Array, bit: number): number {
  return areas.reduce((sum, area, code) => (code & (1 << bit) ? sum + area : sum), 0);
}

/** An exposed stencil stands a tenth of the mesh's own thickness above it [S6]. */
const emulsionMm = 0.008;
/** And lasts longer than any edition by hand. */
const exposedLasts = 5000;

/** The ridge along a layer's edges, and how much of what it prints lies within its reach. */
export function ridgeOfLayer(
  job: Job,
  layer: JobLayer,
  { prints }: Pick<Stencil, 'prints'>,
  press: PlannedPress,
  memory: Memory,
): EdgeRidge & RidgeOver {
  const thicknessMm = layer.tone ? emulsionMm : materialFor(job, layer.cut).thicknessMm;
  const ridge = edgeRidge(depositOfRun(press, layer.id).wetMicrons, thicknessMm);
  const reachMm = (ridge.withinMm[0] + ridge.withinMm[1]) / 2;
  const share = memory.part(`ridge share ${layer.id}`, { prints, reachMm }, nearEdges);
  return { ...ridge, ...ridgeOver(ridge, share) };
}

/** The same for openings that are no run yet: cut from a sheet so thick, printed with so thick a film. */
export function ridgeOfPrints(prints: Region, thicknessMm: number, wetMicrons: number): EdgeRidge & RidgeOver {
  const ridge = edgeRidge(wetMicrons, thicknessMm);
  return { ...ridge, ...ridgeOver(ridge, nearEdges({ prints, reachMm: (ridge.withinMm[0] + ridge.withinMm[1]) / 2 })) };
}

/** Share of a shape that lies within reach of its edges. */
function nearEdges({ prints, reachMm }: { readonly prints: Region; readonly reachMm: number }): number {
  // Outlines to a fiftieth of a millimetre: far finer than how well the reach itself is known.
  const shape = simplify(prints, 0.02);
  const whole = regionArea(shape);
  return whole > 0 ? 1 - regionArea(offsetRegion(shape, -reachMm)) / whole : 0;
}

/** Run by run: which sheets it can share, and how long they last. Layers without a stencil are left alone. */
export function wearReads(
  job: Job,
  layers: readonly JobLayer[],
  stencils: readonly CutLayer[],
  press: PlannedPress,
  memory: Memory,
): RunMaterial[] {
  const spreads = new Map(layers.map((l) => [l.id, l.spreadMm]));
  return layers.map((layer): RunMaterial => {
    if (layer.tone)
      return { group: `tone ${layer.id}`, set: `tone ${layer.id}`, cutMinutes: 0, dries: 1, washable: true, lasts: exposedLasts };
    const material = materialFor(job, layer.cut);
    const alike = stencils
      .filter((s) => s.layer.cut === layer.cut && !s.layer.tone)
      .map(({ layer: { id, side }, stencil }, i) => ({ id, side, stencil, run: i + 1, sheetsThrough: 1 }));
    const group = stencilGroups(alike).findIndex((g) => g.layers.some((l) => l.id === layer.id));
    const kerfMm = kerfOf(job, material.id);
    const set = planCut(alike, spreads, material, kerfMm).sets.findIndex((s) => s.serves.includes(layer.id));
    const leader = alike.find((l) => l.id === planCut(alike, spreads, material, kerfMm).sets[set]?.layerId);
    const stencil = stencils.find((s) => s.layer.id === layer.id)?.stencil;
    return {
      group: `${layer.cut} ${group}`,
      set: `${layer.cut} ${set}`,
      cutMinutes: leader?.stencil.knife.minutes ?? 0,
      dries: stencil ? ridgeOfLayer(job, layer, stencil, press, memory).meanTimes : 1,
      washable: material.washable,
      lasts: Math.max(1, material.prints[0]),
    };
  });
}

/** Cuts with the layers they serve, and what is cut how often. */
export function planCuts(
  job: Job,
  layers: readonly JobLayer[],
  planned: readonly PlannedLayer[],
  cuts: ReadonlyMap<string, Region>,
): PlannedCut[] {
  const spreads = new Map(layers.map((l) => [l.id, l.spreadMm]));
  return job.cuts.flatMap((cut): PlannedCut[] => {
    const region = cuts.get(cut.id);
    if (!region) return [];
    const served = planned.filter((l) => l.cutId === cut.id && !l.tone);
    if (served.length === 0 && planned.some((l) => l.cutId === cut.id)) return [];
    const material = materialFor(job, cut.id);
    const kerfMm = kerfOf(job, material.id);
    const ids = { id: cut.id, name: cut.name, region, materialId: material.id, layers: served.map((l) => l.id) };
    return [{ ...ids, ...planCut(served, spreads, material, kerfMm) }];
  });
}

/** The shelf: every ink alone on the first paper, and how far to trust it. */
export function planInks(job: Job, inks: FoundInks): PlannedInk[] {
  const paper = firstPaper(job, inks);
  return job.inks.map((ink): PlannedInk => {
    const film = inks.inks.get(ink.id);
    const none = new Float64Array(36);
    return {
      id: ink.id,
      name: ink.name,
      role: ink.role,
      swatch: film ? inkSwatch(film, paper, inks) : swatchOf(paper),
      k: film?.k ?? none,
      s: film?.s ?? none,
      trust: inks.trust.get(ink.id)!,
    };
  });
}
