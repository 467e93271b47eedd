import type { Job, JobLayer } from '../../../job/index.ts';
import { planGaps, risersAt, stretchAt, type PlannedGap } from './gaps.ts';
import {
  adviseGap,
  adviseMesh,
  depositOf,
  fitScreen,
  meshTable,
  studioDefaults,
  tapingPlan,
  type Deposit,
  type GapAdvice,
  type Mesh,
  type MeshAdvice,
  type OffContact,
  type Risers,
  type ScreenFit,
  type TapingPlan,
} from '../../../press/index.ts';
import { attempt, problem, type Problem } from '../../../problem.ts';
import { figure, length, lengths, say } from '../../../../words/say.ts';
import { pick, type Memory } from '../../memory.ts';

/** The screen and what it does to the film, the fit and the size of the image. */
export interface PlannedPress {
  /** False when the job has no screen: figures below are then those of a usual mesh. */
  readonly screenKnown: boolean;
  readonly deposit: Deposit;
  /** Run by run, in laydown order: what its mesh lays down. A run may have a mesh of its own. */
  readonly runs: readonly RunMesh[];
  /** The usual meshes, coarse to fine, with what each lays down and what speaks against it for the finest detail that the materials allow. */
  readonly meshes: readonly MeshAdvice[];
  readonly gap: GapAdvice;
  /** The gap that is used: the printmaker's, else the advised one. */
  readonly gapMm: number;
  /** Run by run, in laydown order: a run may have a gap of its own. */
  readonly gaps: readonly PlannedGap[];
  readonly fit: ScreenFit | null;
  /** The studio's squeegee, or the one that suits the image: the bead of ink along it is what stays of a pot. */
  readonly bladeMm: number;
  readonly taping: TapingPlan | null;
  readonly offContact: OffContact | null;
  readonly risers: Risers | null;
  readonly problems: readonly Problem[];
}

/** The mesh that a run is printed through. */
export interface RunMesh {
  readonly layerId: string;
  readonly deposit: Deposit;
  /** Another than the job's screen has. */
  readonly own: boolean;
  /** `43-80`: threads a cm and thread, what its screen is called. */
  readonly name: string;
}

/** A usual mesh for hand printing with water-based ink, until the job names one. */
const usualMesh: Mesh = meshTable.find((row) => row.perCm === 77 && row.threadMicrons === 48) ?? meshTable[0];

interface CutSheets {
  readonly cuts: readonly Pick<Job['cuts'][number], 'sheetMm'>[];
}

type PressReads = Pick<Job, 'screen' | 'image' | 'papers' | 'materials' | 'stencilMarginMm'> & CutSheets;

/** `layers`: those that print, in laydown order. */
export function planPress(job: PressReads, layers: readonly RunReads[] = []): PlannedPress {
  const problems: Problem[] = [];
  const { screen } = job;
  const imageMm = [job.image.widthMm, job.image.heightMm] as const;
  const deposit = (screen && attempt(problems, () => depositOf(screen.mesh, screen.transfer))) ?? depositOf(usualMesh);
  const runs = layers.map(({ id, mesh }): RunMesh => {
    const own = mesh && attempt(problems, () => depositOf(mesh, screen?.transfer, undefined, `layers[#${id}].mesh`));
    const name = meshName((own ?? deposit).mesh);
    return { layerId: id, deposit: own ?? deposit, own: name !== meshName(deposit.mesh), name };
  });
  const gap = adviseGap(imageMm, screen?.tensionNPerCm);
  // As fine as anybody sets it.
  const gapMm = screen?.offContactMm ?? Math.floor(gap.gapMm / 0.05 + 1e-9) * 0.05;
  const known = { deposit, runs, meshes: meshesFor(job), gap, gapMm };
  return screen ? onScreen({ ...job, screen }, layers, known, problems) : withoutScreen(job, layers, known, problems);
}

/** What of the press does not depend on its frame. */
type AnyScreen = Pick<PlannedPress, 'deposit' | 'runs' | 'meshes' | 'gap' | 'gapMm'>;

/** Meshes for the finest detail that is cut, the coarsest first. */
function meshesFor({ materials }: Pick<Job, 'materials'>): PlannedPress['meshes'] {
  const leastDetailMm = Math.min(1, ...materials.map((m) => Math.min(m.leastOpeningMm, m.leastBridgeMm)));
  return [...adviseMesh({ leastDetailMm })].sort((a, b) => a.mesh.perCm - b.mesh.perCm || a.mesh.threadMicrons - b.mesh.threadMicrons);
}

const usualBladeMm = ({ image }: Pick<Job, 'image'>): number => image.widthMm + 2 * studioDefaults.bladePastImageMm[1];

function withoutScreen(job: PressReads, layers: readonly RunReads[], known: AnyScreen, problems: Problem[]): PlannedPress {
  problems.push(
    problem('note', 'no-screen', 'screen', say('press.noScreen', { threads: figure(usualMesh.perCm) }), say('press.enterScreen')),
  );
  const { gaps } = planGaps(job, layers, { fit: null, gapMm: known.gapMm, growth: null, risers: null });
  const none = { fit: null, taping: null, offContact: null, risers: null };
  return { ...known, ...none, screenKnown: false, gaps, bladeMm: usualBladeMm(job), problems };
}

function onScreen(
  job: PressReads & { readonly screen: NonNullable<Job['screen']> },
  layers: readonly RunReads[],
  known: AnyScreen,
  problems: Problem[],
): PlannedPress {
  const { screen } = job;
  const { gap, gapMm } = known;
  const imageMm = [job.image.widthMm, job.image.heightMm] as const;
  const frameInsideMm = [screen.insideWidthMm, screen.insideHeightMm] as const;
  const largest = job.papers.reduce<readonly [number, number] | undefined>(
    (most, p) => [Math.max(most?.[0] ?? 0, p.widthMm), Math.max(most?.[1] ?? 0, p.heightMm)],
    undefined,
  );
  const fit = attempt(problems, () =>
    fitScreen({ frameInsideMm, imageMm, sheetMm: largest, squeegeeMm: screen.squeegeeMm, hingeSide: screen.hinge }),
  );
  if (fit) problems.push(...fit.problems);
  const taping =
    fit &&
    attempt(problems, () =>
      tapingPlan({
        frameInsideMm,
        imageMm,
        imageAtMm: fit.imageAtMm,
        stencilMarginMm: leastMargin(job),
        tapeWidthMm: screen.tapeWidthMm,
        hingeSide: screen.hinge,
        bladeMm: screen.squeegeeMm ?? fit.squeegee.bestMm,
        travelMm: fit.squeegee.travelMm,
      }),
    );
  if (taping) problems.push(...taping.problems);
  const bladeMm = screen.squeegeeMm ?? fit?.squeegee.bestMm ?? usualBladeMm(job);
  const stretched = fit && attempt(problems, () => stretchAt(job, fit, gapMm));
  if (stretched) problems.push(...stretched.problems);
  const risers = stretched && fit && attempt(problems, () => risersAt(job, fit, gapMm));
  if (risers) problems.push(...risers.problems);
  const planned = planGaps(job, layers, { fit, gapMm, growth: stretched, risers });
  problems.push(...planned.problems);
  problems.push(...outOfRange(gap, screen.offContactMm, 'screen.offContactMm'));
  for (const one of planned.gaps) if (one.own) problems.push(...outOfRange(gap, one.gapMm, `layers[#${one.layerId}].offContactMm`));
  return { ...known, screenKnown: true, gaps: planned.gaps, fit, bladeMm, taping, offContact: stretched, risers, problems };
}

/** The narrowest border that any stencil's sheet leaves: the tape must hold that one too. */
function leastMargin({ image, stencilMarginMm, cuts }: Pick<Job, 'image' | 'stencilMarginMm'> & CutSheets): number {
  const usual = Math.max(stencilMarginMm, 5);
  return Math.min(
    ...(cuts.length === 0 ? [usual] : []),
    ...cuts.map(({ sheetMm }) => (sheetMm ? Math.max(5, Math.min(sheetMm[0] - image.widthMm, sheetMm[1] - image.heightMm) / 2) : usual)),
  );
}

/** A gap outside what this size and mesh usually ask for: it may be right, and is said to be unusual. */
function outOfRange({ rangeMm }: GapAdvice, gapMm: number | undefined, path: string): Problem[] {
  if (gapMm === undefined || (gapMm >= rangeMm[0] - 0.05 && gapMm <= rangeMm[1] + 0.05)) return [];
  const values = { gap: length(gapMm, 1), usual: lengths(rangeMm, 'to', 1) };
  return gapMm > rangeMm[1]
    ? [problem('note', 'gap-above-usual', path, say('press.gapAboveUsual', values), say('press.tryLowerGap'))]
    : [problem('note', 'gap-below-usual', path, say('press.gapBelowUsual', values), say('press.tryHigherGap'))];
}

type RunReads = Pick<JobLayer, 'id' | 'name' | 'offContactMm' | 'mesh'>;

export const meshName = ({ perCm, threadMicrons }: Pick<Mesh, 'perCm' | 'threadMicrons'>): string => `${perCm}-${threadMicrons}`;

/** What a run's mesh lays down; that of the job's screen for a run that is not known. */
export const depositOfRun = ({ runs, deposit }: Pick<PlannedPress, 'runs' | 'deposit'>, layerId: string): Deposit =>
  runs.find((run) => run.layerId === layerId)?.deposit ?? deposit;

/** `planPress`, remembered. */
export function pressOf(job: Job, layers: readonly RunReads[], memory: Memory): PlannedPress {
  const runs = layers.map((l) => pick(l, 'id', 'name', 'offContactMm', 'mesh'));
  return memory.part(
    'press',
    {
      job: { ...pick(job, 'screen', 'image', 'papers', 'materials', 'stencilMarginMm'), cuts: job.cuts.map((c) => pick(c, 'sheetMm')) },
      runs,
    },
    pressFrom,
  );
}

const pressFrom = ({ job, runs }: { readonly job: Parameters<typeof planPress>[0]; readonly runs: readonly RunReads[] }): PlannedPress =>
  planPress(job, runs);
