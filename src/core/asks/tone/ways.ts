import { deltaE00, labFromXyz, xyzAt, type Lab } from '../../colour/index.ts';
import { studioDefaults } from '../../edition/index.ts';
import type { Region } from '../../form/index.ts';
import { stepCuts, toneForesight, toneSteps, type ToneSteps } from '../../halftone/index.ts';
import { filmOf, overlapSpectra, type Film } from '../../ink/index.ts';
import { mostLayers, parseJob, type Job, type JobLayer } from '../../job/index.ts';
import { materialOf, materialsOf, potOfLayer, ratesOf, ridgeOfPrints, sheetsOf, thicker } from '../../plan/index.ts';
import { fail, ProblemError } from '../../problem.ts';
import { knifeWork } from '../../stencil/index.ts';
import { quietTask, type Task } from '../../task.ts';
import { name as asName, say } from '../../../words/say.ts';
import { inkBench, paperOf } from '../bench.ts';
import { modelOf } from '../split.ts';
import { cutLines } from './cut-lines.ts';
import { cutRuns, type RunToCut } from './cut-runs.ts';

/** How a run's tone may be printed: through a film, as cut lines, or as two or three flat strengths of its ink. */
export const toneWays = ['film', 'lines', 'two', 'three'] as const;
export type ToneWayName = (typeof toneWays)[number];

/** A run of tone, and what its film covers over the image, 0..255. */
export interface RunOfTone {
  readonly job: Job;
  readonly layerId: string;
  readonly plane: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly paperId?: string;
  readonly materialId?: string;
}

export interface ToneWay {
  readonly kind: ToneWayName;
  /** Hands at work: on film and screen or at the knife, and at the press with all its runs. */
  readonly makeMinutes: number;
  readonly pressMinutes: number;
  /** Knife metres. */
  readonly metres: number;
  /** Mean ΔE00 between what the film would print and this, over the image, as eyes see it that tell no dots or lines apart. */
  readonly off: number;
  /** Runs that take the place of the film's, the first printed first; none: the film stays. */
  readonly runs: readonly RunToCut[];
}

export const minutesOf = ({ makeMinutes, pressMinutes }: Pick<ToneWay, 'makeMinutes' | 'pressMinutes'>): number =>
  makeMinutes + pressMinutes;

/** Farther off than this from the nearest of them, a way prints another picture: twice as far, and this much ΔE00 more. */
const another = 2;

/** The least work among the ways that need no film and keep the picture: what a hand with a knife alone would take. */
export function leastCut(ways: readonly ToneWay[]): ToneWay | undefined {
  const cut = ways.filter((w) => w.kind !== 'film');
  const most = 2 * Math.min(...cut.map((w) => w.off)) + another;
  return cut.filter((w) => w.off <= most).sort((a, b) => minutesOf(a) - minutesOf(b))[0];
}

const levels = 65;

/** Every way of printing a run's tone, with its work and with what it changes. A way that this ink or this material does not hold is left out. */
export async function askToneWays(run: RunOfTone, task: Task = quietTask): Promise<ToneWay[]> {
  const { job, layerId } = run;
  const layer = job.layers.find((l) => l.id === layerId && l.tone);
  if (!layer || layer.ink === null) fail('no-tone', `layers[#${layerId}]`, say('halftone.noToneRun'), say('halftone.giveTone'));
  const tones = filmTones(run, layer);
  const ways: ToneWay[] = [
    { kind: 'film', makeMinutes: studioDefaults.filmMinutes, pressMinutes: pressMinutes(job, 1), metres: 0, off: 0, runs: [] },
  ];
  const makers = [() => linesWay(run, layer, tones), () => stepsWay(run, layer, tones, 2), () => stepsWay(run, layer, tones, 3)];
  for (const [i, make] of makers.entries()) {
    await task.pause();
    const way = make();
    if (way) ways.push(way);
    task.report((i + 1) / makers.length);
  }
  return ways;
}

/** Colours of the film's tones from bare to solid, and how much of the image has each. */
interface FilmTones {
  readonly labs: readonly Lab[];
  readonly weight: Float64Array;
}

function filmTones({ job, plane, paperId }: RunOfTone, layer: JobLayer): FilmTones {
  const alone = { ...job, layers: [layer], wanted: [], potLogs: [], done: undefined, picture: undefined };
  const reads = job.proofReadings.filter((r) => r.layers.length === 1 && r.layers[0] === layer.id);
  const { lab } = toneForesight(modelOf({ ...alone, proofReadings: reads }, paperId));
  const weight = new Float64Array(levels);
  for (let i = 0; i < plane.length; i++) weight[Math.round((plane[i] * (levels - 1)) / 255)] += 1 / plane.length;
  return { labs: Array.from({ length: levels }, (_, i) => [...lab([i / (levels - 1)])] as unknown as Lab), weight };
}

/** Hands at the press for so many runs: mixing, setting up, every sheet once, washing. */
function pressMinutes(job: Job, runs: number): number {
  const { setUpMinutes, cleanMinutes, pullsPerHour } = job.day;
  return runs * (setUpMinutes + cleanMinutes + studioDefaults.mixMinutesPerRun + (pullsOf(job) * 60) / pullsPerHour);
}

/** Sheets and newsprint that go through one run. */
function pullsOf(job: Job): number {
  try {
    const sheets = sheetsOf(job, 1);
    return sheets.runs[0].prepare + sheets.setUp.perRun;
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return 0;
  }
}

function knifeOf(job: Job, regions: readonly Region[]): { readonly makeMinutes: number; readonly metres: number } {
  const work = regions.map((region) => knifeWork(region, region.rings.length, ratesOf(job)));
  return { makeMinutes: work.reduce((sum, w) => sum + w.minutes, 0), metres: work.reduce((sum, w) => sum + w.metres, 0) };
}

/** What a run keeps of the one whose place it takes. */
function kept({ id, name, ink, strength, base, bases, mesh, offContactMm, note }: JobLayer): Omit<RunToCut, 'region'> {
  const all = { ink, strength, base, bases, mesh, offContactMm, note };
  return { id, name, ...Object.fromEntries(Object.entries(all).filter(([, v]) => v !== undefined)) };
}

function linesWay(run: RunOfTone, layer: JobLayer, { labs, weight }: FilmTones): ToneWay | null {
  const { job, plane, width, height, paperId, materialId } = run;
  const grid = (w: number, h: number): Float32Array =>
    Float32Array.from({ length: w * h }, (_, i) => {
      const cover = meanUnder(plane, width, height, i % w, Math.floor(i / w), w, h);
      return labs[Math.round((cover * (levels - 1)) / 255)][0];
    });
  // Lines of several runs must not lie along one another.
  const angleDeg = [45, 0, 90, 135][job.layers.indexOf(layer) % 4];
  const ask = { way: 'parallel', angleDeg, ink: layer.ink!, strength: layer.strength, paperId, materialId } as const;
  try {
    const { cut, tones } = cutLines(job, ask, { grid, drawnIn: false });
    if (cut.region.rings.length === 0) return null;
    const off = labs.reduce((sum, lab, i) => {
      const share = tones.shareAt(lab[0]);
      return sum + weight[i] * deltaE00(lab, tones.lab(share < cut.lightest ? 0 : share));
    }, 0);
    const runs: RunToCut[] = [{ ...kept(layer), id: layer.id, name: layer.name, region: cut.region }];
    return { kind: 'lines', ...knifeOf(job, [cut.region]), pressMinutes: pressMinutes(job, 1), off, runs };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return null;
  }
}

/** Mean of a plane under one place of a coarser grid. */
function meanUnder(plane: Uint8Array, width: number, height: number, x: number, y: number, w: number, h: number): number {
  const left = Math.min(width - 1, Math.floor((x * width) / w)),
    right = Math.max(left + 1, Math.floor(((x + 1) * width) / w));
  const top = Math.min(height - 1, Math.floor((y * height) / h)),
    bottom = Math.max(top + 1, Math.floor(((y + 1) * height) / h));
  let sum = 0;
  for (let row = top; row < bottom; row++) for (let i = left; i < right; i++) sum += plane[row * width + i];
  return sum / ((bottom - top) * (right - left));
}

function stepsWay(run: RunOfTone, layer: JobLayer, tones: FilmTones, runs: 2 | 3): ToneWay | null {
  const { job, plane, width, height, materialId } = run;
  const { widthMm, heightMm } = job.image;
  const { leastBridgeMm, leastOpeningMm, thicknessMm } = materialOf(materialsOf(job), materialId);
  const stack = flatsOn(run, layer);
  const chosen = (times: readonly number[]): ToneSteps =>
    toneSteps({ tones: tones.labs, weight: tones.weight, runs, stack: (strengths) => stack(strengths, times) });
  const cutsOf = ({ from }: ToneSteps): Region[] =>
    stepCuts({
      plane,
      width,
      height,
      widthMm,
      heightMm,
      from: from.map((level) => level / (levels - 1)),
      leastBridgeMm,
      leastOpeningMm,
    });
  // As thick as the edges of these very shapes make it: known once they are there.
  const first = cutsOf(chosen([]));
  const { wetMicrons } = inkBench(job);
  const steps = chosen(first.map((region) => (region.rings.length > 0 ? ridgeOfPrints(region, thicknessMm, wetMicrons).colourTimes : 1)));
  const regions = cutsOf(steps);
  if (regions.some((region) => region.rings.length === 0)) return null;
  return {
    kind: runs === 2 ? 'two' : 'three',
    ...knifeOf(job, regions),
    pressMinutes: pressMinutes(job, runs),
    off: steps.off,
    runs: regions.map(
      (region, i): RunToCut => ({
        ...kept(layer),
        id: `${layer.id}-${i + 1}`,
        name: `${layer.name} ${i + 1}`,
        strength: steps.strengths[i],
        region,
      }),
    ),
  };
}

/** Colours of an ink's strengths laid flat one on the other: the paper, the first, the first two, … */
function flatsOn({ job, paperId }: RunOfTone, layer: JobLayer): (strengths: readonly number[], times: readonly number[]) => Lab[] {
  const bench = inkBench(job);
  const { spectrum } = paperOf(bench, paperId);
  const { found } = bench;
  const films = new Map<string, Film>();
  const filmAt = (strength: number, times: number): Film => {
    const key = `${strength} ${times}`;
    let film = films.get(key);
    if (!film) films.set(key, (film = filmOf(thicker(potOfLayer({ ...layer, strength }, found)!, times))));
    return film;
  };
  return (strengths, times) => {
    const rows = overlapSpectra(
      spectrum,
      strengths.map((s, i) => filmAt(s, times[i] ?? 1)),
      found.surface,
    );
    return [0, ...strengths.map((_, i) => (2 << i) - 1)].map((row) => labFromXyz(xyzAt(rows, row * spectrum.length)));
  };
}

/** The job with a run of tone printed this way: what is cut for it takes its place in the laydown. */
export function withToneWay(job: Job, layerId: string, way: ToneWay, materialId?: string): Job {
  if (way.runs.length === 0) return job;
  const rest = job.layers.filter((l) => l.id !== layerId);
  if (rest.length + way.runs.length > mostLayers)
    fail(
      'too-many-layers',
      `layers[#${layerId}]`,
      say('halftone.tooManyRuns', { layer: asName(layerId), n: rest.length + way.runs.length, most: mostLayers }),
      say('halftone.fewerStrengths'),
    );
  const used = new Set(rest.map((l) => l.cut));
  const cuts = job.cuts.filter((c) => used.has(c.id) || !job.layers.some((l) => l.cut === c.id));
  const placed = new Set(cuts.flatMap((c) => c.parts.map((p) => p.form)));
  const forms = job.forms.filter((f) => placed.has(f.id) || !job.cuts.some((c) => c.parts.some((p) => p.form === f.id)));
  const made = cutRuns({ ...job, forms, cuts, layers: rest }, way.runs, materialOf(materialsOf(job), materialId).id);
  const reads = (r: { readonly layers: readonly string[] }): boolean => !r.layers.includes(layerId);
  return parseJob({
    ...job,
    forms: [...forms, ...made.forms],
    cuts: [...cuts, ...made.cuts],
    layers: job.layers.flatMap((l) => (l.id === layerId ? made.layers : [l])),
    wanted: job.wanted.filter(reads),
    proofReadings: job.proofReadings.filter(reads),
  });
}
