import { deltaE00, type Lab } from '../../../colour/index.ts';
import type { Region } from '../../../form/index.ts';
import type { Job, JobLayer } from '../../../job/index.ts';
import {
  driftAdvice,
  measuredRegister,
  ownSigma,
  registerBudget,
  registerFromLines,
  registerShifts,
  sigmaOf,
  type Beneath,
  type RegisterBudget,
  type RegisterFound,
  type RegisterDraws,
  type RegisterSigma,
} from '../../../press/index.ts';
import { meetingOverlap, seamGrounds, type Codes, type SeamGround } from '../../../print/index.ts';
import { attempt, problem, ProblemError, type Problem } from '../../../problem.ts';
import { length, list, name as asName, say, type Saying } from '../../../../words/say.ts';
import { pick, type Memory } from '../../memory.ts';
import { gapProblems, growthXY } from './gaps.ts';
import type { CodeColours, CutLayer } from '../cut/stencils.ts';
import type { PlannedPress } from './press.ts';
import { planStops, type PlannedStops, type StopSetting } from './stops.ts';

/** How far off the layers will fall, and what the drawing forgives. */
export interface PlannedRegister {
  readonly sigma: RegisterSigma;
  readonly budget: RegisterBudget | null;
  /** By edge, that of most sheets first: `sigma` and `budget` are its. A few torn sheets bind no others. */
  readonly edges: readonly EdgeRegister[];
  /** 200 sheets with seeded misregister. `sheets[draws.worst[k]]` are among the worst twentieth. */
  readonly draws: RegisterDraws;
  /** The drawing with the stops, for each paper by id. */
  readonly stops: PlannedStops['stops'];
  /** The stops as they stand on the board: once for all papers, unless the job places the image in ways that exclude each other. */
  readonly stopSettings: readonly StopSetting[];
  /** What the job's test sheets tell; null where none were read. */
  readonly tested: TestedRegister | null;
  readonly problems: readonly Problem[];
}

/** Its problems stay here: readings half written stop nothing. */
export interface TestedRegister {
  /** null: too few readings yet. */
  readonly found: RegisterFound | null;
  readonly advice: readonly Saying[];
  /** These are the figures that the job is planned with. */
  readonly taken: boolean;
  readonly problems: readonly Problem[];
}

const sheetsDrawn = 200;

export interface MeetingPair {
  readonly first: string;
  readonly second: string;
  readonly overlapMm: number;
  /** What a gap between the two would lay bare. */
  readonly grounds?: readonly SeamGround[];
  readonly beneath?: Beneath;
  /** The lighter of the two inks on this paper. */
  readonly lighter?: string;
}

/** Sheets whose edges hold the register alike. */
export interface EdgeRegister {
  readonly edge: 'cut' | 'torn';
  readonly paperIds: readonly string[];
  readonly sigma: RegisterSigma;
  readonly budget: RegisterBudget | null;
}

/** How far each pair of layers overlaps where their shapes meet. */
function meetingPairs(
  layers: readonly { readonly id: string; readonly bit: number; readonly prints: Region }[],
  codes: Codes,
): MeetingPair[] {
  const pairs: MeetingPair[] = [];
  const inside =
    (bit: number) =>
    (x: number, y: number): boolean => {
      const px = Math.floor(x / codes.mmPerPx),
        py = Math.floor(y / codes.mmPerPx);
      return px >= 0 && py >= 0 && px < codes.width && py < codes.height && (codes.data[py * codes.width + px] & (1 << bit)) !== 0;
    };
  for (let a = 0; a < layers.length; a++) {
    for (let b = a + 1; b < layers.length; b++) {
      const overlapMm = meetingOverlap(layers[a].prints, layers[b].prints, inside(layers[b].bit));
      if (overlapMm === null) continue;
      const grounds = seamGrounds(codes, layers[a].bit, layers[b].bit, overlapMm);
      pairs.push({ first: layers[a].id, second: layers[b].id, overlapMm, grounds });
    }
  }
  return pairs;
}

export function planRegister(
  job: Pick<Job, 'register' | 'papers' | 'image' | 'seed' | 'screen'>,
  layers: readonly Pick<JobLayer, 'id' | 'name' | 'offContactMm'>[],
  meeting: readonly MeetingPair[],
  press: PlannedPress,
): PlannedRegister {
  const problems: Problem[] = [];
  const { method, humidityPercent, measured } = job.register;
  const imageMm = [job.image.widthMm, job.image.heightMm] as const;
  const sigmaMm = ownSigma(job.register, imageMm);
  const kinds = edgesOf(job);
  const sigma = sigmaOf(method, kinds[0].edge, sigmaMm);
  // Stops must pass under the lowest of the gaps.
  const lowestGapMm = Math.min(press.gapMm, ...press.gaps.map((gap) => gap.gapMm));
  const growthOf = (id: string): readonly [number, number] | undefined => {
    const growth = press.gaps.find((gap) => gap.layerId === id)?.growth;
    return growth && press.fit ? growthXY(growth, press.fit.strokeAxis) : undefined;
  };
  const { stops, settings, problems: ofStops } = planStops(job, lowestGapMm);
  problems.push(...ofStops);
  const grains = new Set(job.papers.map((p) => p.grain));
  const budgetFor = (edge: EdgeRegister['edge']): RegisterBudget =>
    registerBudget({
      layers: layers.map((l) => ({ id: l.id, name: l.name, growthMm: growthOf(l.id) })),
      method,
      edge,
      sigmaMm,
      imageMm,
      fromStopsMm: stops[0]?.template.fromStopsMm,
      grain: grains.size === 1 ? [...grains][0] : 'unknown',
      humidityPercent,
      forgives: meeting,
    });
  const edges = kinds.map(
    ({ edge, paperIds }): EdgeRegister => ({
      edge,
      paperIds,
      sigma: sigmaOf(method, edge, sigmaMm),
      budget: attempt(problems, () => budgetFor(edge)),
    }),
  );
  const { budget } = edges[0];
  if (budget) problems.push(...budget.problems);
  problems.push(...edges.slice(1).flatMap((other) => opensMore(job, layers, budget, other)));
  const forgives = (id: string): number | null =>
    meeting
      .filter((pair) => pair.first === id || pair.second === id)
      .reduce<number | null>((least, pair) => Math.min(least ?? Infinity, pair.overlapMm), null);
  const setting = { fit: press.fit, gapMm: press.gapMm, growth: press.offContact, risers: press.risers, gaps: press.gaps };
  if (press.fit) problems.push(...gapProblems(job, layers, setting, sigma.toleranceMm, forgives));
  const spread = measured ? { xMm: measured.xMm, yMm: measured.yMm, angleDeg: measured.turnDeg } : sigma.sigmaMm;
  const draws = registerShifts(job.seed, spread, sheetsDrawn, { layers: Math.max(1, layers.length), imageMm });
  return { sigma, budget, edges, draws, stops, stopSettings: settings, tested: testedOf(job.register), problems };
}

/** Edges that hold alike; of most sheets first. Only stops feel the edge. */
function edgesOf({ papers, register }: Pick<Job, 'papers' | 'register'>): { edge: EdgeRegister['edge']; paperIds: string[] }[] {
  const alike = register.method !== 'stops' || register.sigmaMm !== undefined || register.measured !== undefined;
  const of = (edge: EdgeRegister['edge']): typeof papers => papers.filter((p) => alike || p.edge === edge);
  const sheets = (edge: EdgeRegister['edge']): number => of(edge).reduce((sum, p) => sum + Math.max(1, p.count), 0);
  const kinds = (['cut', 'torn'] as const).filter((edge, i) => of(edge).length > 0 && (!alike || i === 0));
  if (kinds.length === 0) return [{ edge: 'cut', paperIds: [] }];
  return kinds.sort((a, b) => sheets(b) - sheets(a)).map((edge) => ({ edge, paperIds: of(edge).map((p) => p.id) }));
}

/** Pairs that open on sheets of this edge and not on most. */
function opensMore(
  job: Pick<Job, 'papers'>,
  layers: readonly Pick<JobLayer, 'id' | 'name'>[],
  most: RegisterBudget | null,
  other: EdgeRegister,
): Problem[] {
  const named = (id: string): ReturnType<typeof asName> => asName(layers.find((l) => l.id === id)?.name ?? id);
  const more = (other.budget?.pairs ?? []).filter(
    (p, i) => p.verdict === 'opens' && p.beneath === 'bare' && most?.pairs[i]?.verdict !== 'opens',
  );
  if (more.length === 0 || other.edge === 'cut') return [];
  const papers = list(job.papers.filter((p) => other.paperIds.includes(p.id)).map((p) => asName(p.name)));
  const pairs = list(
    more.map((p) => say('register.pairOf', { first: named(p.first), second: named(p.second), off: length(p.likelyMm, 1) })),
  );
  return [
    problem(
      'note',
      'register-opens-torn',
      `papers[#${other.paperIds[0]}].edge`,
      say('register.otherEdge', { papers, tolerance: length(other.sigma.toleranceMm), pairs }),
      say('register.cardStrip'),
    ),
  ];
}

/** A colour that differs by less from one of its neighbours is not found between them. common practice */
const visibleDeltaE = 5;
/** Less of a joint than this is no joint. */
const leastShare = 0.02;

/** What shows through each joint on one paper. `labOfCode`: colours of all codes there. */
function lookBeneath({
  meeting,
  colours,
  bits,
}: {
  readonly meeting: readonly MeetingPair[];
  readonly colours: CodeColours | null;
  readonly bits: readonly { readonly id: string; readonly bit: number }[];
}): MeetingPair[] {
  if (!colours) return [...meeting];
  const lab = (code: number): Lab => [...colours.labOfCode.subarray(code * 3, code * 3 + 3)] as unknown as Lab;
  const lightness = (id: string): number => lab(1 << bits.find((one) => one.id === id)!.bit)[0];
  return meeting.map((met): MeetingPair => {
    const pair = { ...met, lighter: lightness(met.second) > lightness(met.first) ? met.second : met.first };
    const grounds = (pair.grounds ?? []).filter((g) => g.share >= leastShare);
    if (grounds.length === 0) return pair;
    const seen = grounds.filter(
      ({ rest, first, second }) => Math.min(deltaE00(lab(rest), lab(first)), deltaE00(lab(rest), lab(second))) > visibleDeltaE,
    );
    const bare = seen.some(({ rest }) => deltaE00(lab(rest), lab(0)) < 0.5);
    return { ...pair, beneath: bare ? 'bare' : seen.length > 0 ? 'colour' : 'hidden' };
  });
}

function testedOf({ testSheets, measured }: Job['register']): TestedRegister | null {
  if (!testSheets || testSheets.readings.length === 0) return null;
  try {
    const found = registerFromLines(testSheets);
    const own = measuredRegister(found);
    const taken = measured !== undefined && (['xMm', 'yMm', 'turnDeg'] as const).every((key) => Math.abs(own[key] - measured[key]) < 1e-9);
    return { found, advice: driftAdvice(found), taken, problems: found.problems };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { found: null, advice: [], taken: false, problems: error.problems };
  }
}

/** `planRegister`, remembered, with how far the shapes meet. */
export function registerOf(
  job: Job,
  layers: readonly JobLayer[],
  stencils: readonly CutLayer[],
  press: PlannedPress,
  codes: Codes,
  colours: CodeColours | null,
  memory: Memory,
): PlannedRegister {
  // Dots have no seam: what shifts by less than their ruling changes no colour.
  const shapes = stencils.filter((s) => !s.layer.tone).map(({ layer, stencil, bit }) => ({ id: layer.id, bit, prints: stencil.prints }));
  const met = memory.part('meeting', { shapes, codes }, meetingFrom);
  const meeting = memory.part('beneath', { meeting: met, colours, bits: shapes.map((one) => pick(one, 'id', 'bit')) }, lookBeneath);
  const read = pick(job, 'register', 'papers', 'image', 'seed', 'screen');
  return memory.part(
    'register',
    { job: read, layers: layers.map((l) => pick(l, 'id', 'name', 'offContactMm')), meeting, press },
    registerFrom,
  );
}

const meetingFrom = (reads: { readonly shapes: Parameters<typeof meetingPairs>[0]; readonly codes: Codes }): MeetingPair[] =>
  meetingPairs(reads.shapes, reads.codes);

interface RegisterReads {
  readonly job: Parameters<typeof planRegister>[0];
  readonly layers: Parameters<typeof planRegister>[1];
  readonly meeting: readonly MeetingPair[];
  readonly press: PlannedPress;
}

const registerFrom = ({ job, layers, meeting, press }: RegisterReads): PlannedRegister => planRegister(job, layers, meeting, press);
