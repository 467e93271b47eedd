import { length, name as asName, say, sentences, type Saying } from '../../words/say.ts';
import { fail, problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { paperChange } from './screen/damp.ts';
import type { PaperGrowth } from './defaults.ts';
import { checkSize } from './fit.ts';
import type { SizeMm } from './fit.ts';
import { sigmaOf } from './register/register-methods.ts';
import type { RegisterMethod } from './register/register-methods.ts';

export interface BudgetLayer {
  readonly id: string;
  readonly name: string;
  /** Humidity of the room in this run; left out: as in the run before, or the middle of `humidityPercent`. */
  readonly humidityPercent?: number;
  /** Growth of the image by the mesh (`offContact`), mm over the whole image, along x and y. */
  readonly growthMm?: readonly [number, number];
  /** Own method or σ for this layer; else the job's. */
  readonly method?: RegisterMethod;
  readonly sigmaMm?: number;
  /** Known steady shift of this layer (from test sheets), mm. */
  readonly driftMm?: readonly [number, number];
}

export interface BudgetInput {
  readonly layers: readonly BudgetLayer[];
  readonly method: RegisterMethod;
  readonly edge: 'cut' | 'torn';
  /** The studio's own σ of one layer. */
  readonly sigmaMm?: number;
  readonly imageMm: SizeMm;
  /** From the corner with the stops to the image's far edges; left out: the image itself. */
  readonly fromStopsMm?: SizeMm;
  readonly grain: 'along-width' | 'along-height' | 'unknown';
  readonly paperGrowth?: PaperGrowth;
  /** Humidity may wander between these from run to run where a layer doesn't say. */
  readonly humidityPercent?: readonly [number, number];
  /** What the drawing forgives, pair by pair: how far the two shapes overlap where they should meet. */
  readonly forgives?: readonly {
    readonly first: string;
    readonly second: string;
    readonly overlapMm: number;
    /** What a gap between them would lay bare; left out: bare paper. */
    readonly beneath?: Beneath;
    /** The lighter of the two, which shows least where it reaches too far; left out: the first. */
    readonly lighter?: string;
  }[];
}

/** Bare paper; a colour that differs visibly from both sides; or nothing that the eye would find. */
export type Beneath = 'bare' | 'colour' | 'hidden';

export interface PairBudget {
  readonly first: string;
  readonly second: string;
  /** Each cause alone, mm, as the larger of x and y at the worst place of the image. */
  readonly causes: { readonly method: number; readonly paper: number; readonly mesh: number; readonly drift: number };
  /** Held nineteen times in twenty: placings as a root of squares, the steady causes added. */
  readonly likelyMm: number;
  /** Tolerance A + tolerance B + paper + mesh + drift. */
  readonly worstMm: number;
  readonly forgivesMm: number | null;
  readonly verdict: 'holds' | 'tight' | 'opens' | 'unknown';
  readonly beneath: Beneath;
  /** Overlap that holds nineteen times in twenty. */
  readonly wantedOverlapMm: number;
  /** How much to add to what the drawing has; 0: nothing. */
  readonly spreadMm: number;
  /** The layer to spread: the lighter of the two. */
  readonly spreads: string;
  readonly advice: Saying;
}

export interface RegisterBudget {
  readonly pairs: readonly PairBudget[];
  readonly worstPair: PairBudget | null;
  readonly methodText: Saying;
  readonly problems: readonly Problem[];
}

/**
 * All causes of misregister together, for every pair of layers, against what the drawing forgives. Rule for the worst case:
 * tolerance A + tolerance B + paper growth. The likely figure takes the two placings as independent. Throws ProblemError.
 */
export function registerBudget(input: BudgetInput): RegisterBudget {
  const { layers, imageMm } = input;
  checkSize(imageMm, 'image');
  const sigmas = layers.map((layer) =>
    sigmaOf(layer.method ?? input.method, input.edge, layer.sigmaMm ?? (layer.method ? undefined : input.sigmaMm)),
  );
  if (sigmas.some((one) => !(one.sigmaMm >= 0 && one.sigmaMm <= 50)))
    fail('register-sigma', 'register.sigmaMm', say('register.sigmaTooLarge', { most: length(50) }), say('register.measureSigma'));
  const pairs: PairBudget[] = [];
  for (let a = 0; a < layers.length; a++) {
    for (let b = a + 1; b < layers.length; b++) pairs.push(pairOf(input, a, b, sigmas[a].toleranceMm, sigmas[b].toleranceMm));
  }
  const problems = pairs.flatMap((pair) => pairProblem(pair, layers));
  const worstPair = pairs.reduce<PairBudget | null>(
    (worst, pair) => (worst === null || pair.likelyMm > worst.likelyMm ? pair : worst),
    null,
  );
  return { pairs, worstPair, methodText: sigmaOf(input.method, input.edge, input.sigmaMm).text, problems };
}

function pairOf(input: BudgetInput, a: number, b: number, toleranceA: number, toleranceB: number): PairBudget {
  const [first, second] = [input.layers[a], input.layers[b]];
  const reach = input.fromStopsMm ?? input.imageMm;
  const paper = paperBetween(input, a, b, reach);
  // The mesh grows the image from its middle, so an edge moves by half.
  const mesh = [0, 1].map((axis) => Math.abs((first.growthMm?.[axis] ?? 0) - (second.growthMm?.[axis] ?? 0)) / 2);
  const drift = [0, 1].map((axis) => Math.abs((first.driftMm?.[axis] ?? 0) - (second.driftMm?.[axis] ?? 0)));
  const steady = Math.max(...[0, 1].map((axis) => paper[axis] + mesh[axis] + drift[axis]));
  const method = Math.hypot(toleranceA, toleranceB);
  const likelyMm = method + steady;
  const worstMm = toleranceA + toleranceB + steady;
  const found = input.forgives?.find(
    (one) => (one.first === first.id && one.second === second.id) || (one.first === second.id && one.second === first.id),
  );
  const forgivesMm = found?.overlapMm ?? null;
  const beneath = found?.beneath ?? 'bare';
  // Where a gap shows nothing, a joint may open as it likes.
  const holds = forgivesMm !== null && (forgivesMm >= worstMm || beneath === 'hidden');
  const verdict = forgivesMm === null ? 'unknown' : holds ? 'holds' : forgivesMm >= likelyMm ? 'tight' : 'opens';
  const wantedOverlapMm = Math.ceil(likelyMm * 10 - 1e-9) / 10;
  const spreadMm = forgivesMm === null || beneath === 'hidden' ? 0 : Math.max(0, Math.round((wantedOverlapMm - forgivesMm) * 10) / 10);
  const spreads = found?.lighter ?? first.id;
  return {
    first: first.id,
    second: second.id,
    causes: { method, paper: Math.max(...paper), mesh: Math.max(...mesh), drift: Math.max(...drift) },
    likelyMm,
    worstMm,
    forgivesMm,
    verdict,
    beneath,
    wantedOverlapMm,
    spreadMm,
    spreads,
    advice: adviceFor([first.name, second.name], spreads === second.id, verdict, spreadMm, wantedOverlapMm, {
      paper: Math.max(...paper),
      mesh: Math.max(...mesh),
      method,
      drift: Math.max(...drift),
    }),
  };
}

/** How far the paper can have moved between the two runs, at the edge farthest from the stops, per axis. */
function paperBetween(input: BudgetInput, a: number, b: number, reach: SizeMm): readonly [number, number] {
  const known = (run: number): number | undefined =>
    input.layers
      .slice(0, run + 1)
      .reverse()
      .find((layer) => layer.humidityPercent !== undefined)?.humidityPercent;
  const given = input.layers.some((layer) => layer.humidityPercent !== undefined);
  const [low, high] = input.humidityPercent ?? [50, 50];
  const middle = (low + high) / 2;
  const [from, to] = given ? [known(a) ?? middle, known(b) ?? middle] : [low, high];
  const change = paperChange(reach, input.grain, from, to, input.paperGrowth);
  return [Math.max(...change.xMm.map(Math.abs)), Math.max(...change.yMm.map(Math.abs))];
}

function adviceFor(
  [first, second]: readonly [string, string],
  spreadsSecond: boolean,
  verdict: PairBudget['verdict'],
  spreadMm: number,
  wanted: number,
  causes: PairBudget['causes'],
): Saying {
  if (verdict === 'holds') return say('register.nothingToDo');
  if (verdict === 'tight') return say('register.lookAtEverySheet');
  if (verdict === 'unknown') return say('register.letOverlap', { by: length(wanted, 1) });
  const help = {
    method: say('register.orFinerMethod'),
    paper: say('register.orSteadierAir'),
    mesh: say('register.orSameGap'),
    drift: say('register.orMoveStops'),
  };
  const most = (Object.keys(help) as (keyof typeof help)[]).reduce((worst, cause) => (causes[cause] > causes[worst] ? cause : worst));
  const values = { first: asName(first), second: asName(second), by: length(spreadMm, 1) };
  return sentences(spreadsSecond ? say('register.spreadOver', values) : say('register.spreadUnder', values), help[most]);
}

function pairProblem(pair: PairBudget, layers: readonly BudgetLayer[]): Problem[] {
  if (pair.verdict !== 'opens') return [];
  const name = (id: string): ReturnType<typeof asName> => asName(layers.find((layer) => layer.id === id)!.name);
  const overlapMm = pair.forgivesMm ?? 0;
  const values = { first: name(pair.first), second: name(pair.second), off: length(pair.likelyMm, 1) };
  if (pair.beneath === 'colour')
    return [problem('note', 'register-line', `layers[#${pair.spreads}].spreadMm`, say('register.lineShows', values), pair.advice)];
  const message =
    overlapMm < 0.05 ? say('register.pairTouches', values) : say('register.pairOpens', { ...values, overlap: length(overlapMm, 1) });
  return [problem('warning', 'register-opens', `layers[#${pair.spreads}].spreadMm`, message, pair.advice)];
}
