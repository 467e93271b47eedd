import type { Spectrum } from '../../colour/index.ts';
import { addFilm, internal, measured, type Ink, type Member, type Surface } from '../../ink/index.ts';
import { groundSpectrum, learnOnPaper, thicker, type Plan } from '../../plan/index.ts';
import { codeAreas } from '../../print/index.ts';
import { name as asName, say } from '../../../words/say.ts';
import { layerOf, paperOf, refuse, type InkBench } from '../bench.ts';

export interface PrintedOnAsk {
  readonly paperId?: string;
  /** Runs that lie under it, by id, name or number; `below`: those that lie under `layer` where it covers most. */
  readonly over?: readonly string[] | 'below';
  /** The run that is to print it, by id, name or number: its film is as thick as that run lays it. Left out: as the job's screen does. */
  readonly layer?: string | undefined;
  /** On which ground of a sheet that is printed already (its place in the Plan's); left out: on the bare paper. */
  readonly ground?: number | undefined;
}

/** Where an ink is to be printed, and how it lies there: films, gloss and trapping as proofs have taught them. */
export interface PrintedOn {
  /** All that lies there already, as it is seen. */
  readonly seen: Spectrum;
  readonly surface: Surface;
  /** How thick a film lies there, against the same film on paper. */
  readonly deposit: number;
  /** An ink as thick as the run lays it. */
  readonly inkOf: (id: string) => Ink | undefined;
  /** Runs that lie there, by id, first down first. */
  readonly over: readonly string[];
  readonly layerId: string | null;
}

/** Throws `ProblemError` where paper, run or ground is none of the job's. */
export function printedOn(bench: InkBench, ask: PrintedOnAsk, plan?: Plan): PrintedOn {
  const { job, found } = bench;
  const { paper, spectrum } = paperOf(bench, ask.paperId);
  const layer = ask.layer === undefined ? undefined : bench.layers.find((l) => l.id === layerOf(bench, ask.layer ?? '').id);
  const named = ask.over === 'below' ? belowOf(bench, layer?.id, plan) : (ask.over ?? []).map((name) => layerOf(bench, name).id);
  const under = bench.layers.filter((l) => named.includes(l.id) && l.ink !== null && found.inks.has(l.ink));
  const learned = learnOnPaper(job, bench.layers, found, paper.id);
  const grounds = plan?.papers.find((p) => p.id === paper.id)?.grounds?.colours ?? [];
  const ground = ask.ground === undefined ? undefined : grounds[ask.ground];
  if (ask.ground !== undefined && !ground)
    refuse(
      job,
      'no-such-ground',
      'papers',
      say('asks.noSuchGround', { n: ask.ground + 1, paper: asName(paper.name) }),
      grounds.length > 0 ? say('asks.groundsAre', { n: grounds.length }) : say('asks.paperNotPrinted'),
    );
  const surface = learned?.surface ?? found.surface;
  const sheet = ground ? groundSpectrum(ground.srgb, spectrum) : spectrum;
  return {
    seen: learned && under.length > 0 ? seenOver(sheet, learned.laid(under)) : sheet,
    surface,
    deposit: under.length > 0 ? (surface.trapping ?? 1) : 1,
    inkOf: (id) => {
      if (!found.inks.has(id)) return undefined;
      return thicker(learned?.inkOf(id) ?? found.inks.get(id)!, layer?.filmTimes);
    },
    over: under.map((l) => l.id),
    layerId: layer?.id ?? null,
  };
}

/** A sheet with all films of a print over it, as it is seen. */
export function seenOver(sheet: Spectrum, { films, surface, onFilm }: Member): Spectrum {
  const stack = films.reduce((below, film, j) => addFilm(below, j === 0 || !onFilm ? film : onFilm(j - 1, j)), internal(sheet, surface));
  return measured(stack, surface);
}

/** What lies under a run where it covers most of the image. */
function belowOf(bench: InkBench, layerId: string | undefined, plan: Plan | undefined): readonly string[] {
  if (layerId === undefined) refuse(bench.job, 'no-layer-named', 'layers', say('asks.belowWhat'), say('asks.nameTheRun'));
  const bit = plan?.layers.find((l) => l.id === layerId)?.bit;
  if (!plan || bit === undefined) return [];
  const run = bench.layers.findIndex((l) => l.id === layerId);
  const before = bench.layers.slice(0, run).map((l) => l.id);
  // An open run covers area too: its own bit tells, and what lies on top of it doesn't count.
  const areas = new Map<string, number>();
  const bitOf = (id: string): number => plan.layers.find((l) => l.id === id)?.bit ?? 31;
  codeAreas(plan.codes).forEach((areaMm2, code) => {
    if (areaMm2 === 0 || !(code & (1 << bit))) return;
    const key = before.filter((id) => code & (1 << bitOf(id))).join('\n');
    areas.set(key, (areas.get(key) ?? 0) + areaMm2);
  });
  const [most] = [...areas].sort((a, b) => b[1] - a[1]);
  return most && most[0] !== '' ? most[0].split('\n') : [];
}
