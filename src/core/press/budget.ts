import { fail, problem } from '../problem.ts';
import type { Problem } from '../problem.ts';
import { paperChange } from './damp.ts';
import { studioDefaults } from './defaults.ts';
import type { PaperGrowth } from './defaults.ts';
import type { SizeMm } from './fit.ts';
import { sigmaOf } from './register-methods.ts';
import type { RegisterMethod } from './register-methods.ts';

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
  readonly forgives?: readonly { readonly first: string; readonly second: string; readonly overlapMm: number }[];
}

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
  /** Overlap that holds nineteen times in twenty. */
  readonly wantedOverlapMm: number;
  /** How much to add to what the drawing has; 0: nothing. */
  readonly spreadMm: number;
  readonly advice: string;
}

export interface RegisterBudget {
  readonly pairs: readonly PairBudget[];
  readonly worstPair: PairBudget | null;
  readonly methodText: string;
  readonly problems: readonly Problem[];
}

/**
 * All causes of misregister together, for every pair of layers, against what the drawing forgives. Rule for the worst case:
 * tolerance A + tolerance B + paper growth. The likely figure takes the two placings as independent. Throws ProblemError.
 */
export function registerBudget(input: BudgetInput): RegisterBudget {
  const { layers, imageMm } = input;
  if (!(imageMm[0] > 0 && imageMm[1] > 0)) fail('size', 'image', 'The image has no size.', 'Give width and height in mm.');
  const sigmas = layers.map((layer) =>
    sigmaOf(layer.method ?? input.method, input.edge, layer.sigmaMm ?? (layer.method ? undefined : input.sigmaMm)),
  );
  if (sigmas.some((one) => !(one.sigmaMm >= 0 && one.sigmaMm <= 50)))
    fail(
      'register-sigma',
      'register.sigmaMm',
      'The spread of register must be between 0 and 50 mm.',
      'Measure it with a test sheet, or leave it out.',
    );
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
  const verdict = forgivesMm === null ? 'unknown' : forgivesMm >= worstMm ? 'holds' : forgivesMm >= likelyMm ? 'tight' : 'opens';
  const wantedOverlapMm = Math.ceil(likelyMm * 10 - 1e-9) / 10;
  const spreadMm = forgivesMm === null ? 0 : Math.max(0, Math.round((wantedOverlapMm - forgivesMm) * 10) / 10);
  return {
    first: first.id,
    second: second.id,
    causes: { method, paper: Math.max(...paper), mesh: Math.max(...mesh), drift: Math.max(...drift) },
    likelyMm,
    worstMm,
    forgivesMm,
    verdict,
    wantedOverlapMm,
    spreadMm,
    advice: adviceFor(first.name, second.name, verdict, spreadMm, wantedOverlapMm, {
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
  const told = input.layers.some((layer) => layer.humidityPercent !== undefined);
  const [low, high] = input.humidityPercent ?? [50, 50];
  const middle = (low + high) / 2;
  const [from, to] = told ? [known(a) ?? middle, known(b) ?? middle] : [low, high];
  const change = paperChange(reach, input.grain, from, to, input.paperGrowth);
  return [Math.max(...change.xMm.map(Math.abs)), Math.max(...change.yMm.map(Math.abs))];
}

function adviceFor(
  first: string,
  second: string,
  verdict: PairBudget['verdict'],
  spreadMm: number,
  wanted: number,
  causes: PairBudget['causes'],
): string {
  if (verdict === 'holds') return 'Nothing to do.';
  if (verdict === 'tight') return 'Holds nineteen times in twenty; look at every sheet.';
  if (verdict === 'unknown') return `Where these two should meet, let them overlap by ${wanted.toFixed(1)} mm.`;
  const most = Object.entries(causes).sort((one, other) => other[1] - one[1])[0][0];
  const help: Readonly<Record<string, string>> = {
    method: 'or place the sheets by a finer method',
    paper: 'or keep the room’s humidity steadier (35 to 50 %) and let the paper rest in it for a day',
    mesh: 'or print both with the same screen, place and gap',
    drift: 'or move the stops by the steady shift',
  };
  return `Spread ${first} under ${second} by ${spreadMm.toFixed(1)} mm where they meet (spread the lighter one; choke a window that surrounds it), ${help[most]}. In transparent inks the overlap shows as a third colour.`;
}

function pairProblem(pair: PairBudget, layers: readonly BudgetLayer[]): Problem[] {
  if (pair.verdict !== 'opens') return [];
  const name = (id: string): string => layers.find((layer) => layer.id === id)!.name;
  return [
    problem(
      'warning',
      'register-opens',
      `layers ${pair.first}, ${pair.second}`,
      `${name(pair.second)} can fall ${pair.likelyMm.toFixed(1)} mm off ${name(pair.first)}, but they overlap by ${pair.forgivesMm!.toFixed(1)} mm only: bare paper can show.`,
      pair.advice,
    ),
  ];
}

/** Overlap that hand printing asks for as a rule, to show beside the budget. common practice */
export const usualOverlapMm = studioDefaults.overlapMm;
