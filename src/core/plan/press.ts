import type { Job } from '../job/index.ts';
import { adviseGap, adviseMesh, depositOf, fitScreen, meshTable, offContact, risersFor, tapingPlan, type Deposit, type GapAdvice, type Mesh, type MeshAdvice, type OffContact, type Risers, type ScreenFit, type TapingPlan } from '../press/index.ts';
import { problem, ProblemError, type Problem } from '../problem.ts';

/** The screen and what it does to the film, the fit and the size of the image. */
export interface PlannedPress {
  /** False when the job has no screen: figures below are then those of a usual mesh. */
  readonly screenKnown: boolean;
  readonly deposit: Deposit;
  /** The usual meshes, coarse to fine, with what each lays down and what speaks against it for the finest detail that the materials allow. */
  readonly meshes: readonly MeshAdvice[];
  readonly gap: GapAdvice;
  /** The gap that is used: the printmaker's, else the advised one. */
  readonly gapMm: number;
  readonly fit: ScreenFit | null;
  readonly taping: TapingPlan | null;
  readonly offContact: OffContact | null;
  readonly risers: Risers | null;
  readonly problems: readonly Problem[];
}

/** A usual mesh for hand printing with water-based ink, until the job names one. */
const usualMesh: Mesh = meshTable.find((row) => row.perCm === 77 && row.threadMicrons === 48) ?? meshTable[0];

/** Runs a part of the press; what it refuses becomes a problem of the Plan, and the part is missing. */
function attempt<T>(problems: Problem[], work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    problems.push(...error.problems);
    return null;
  }
}

export function planPress(job: Pick<Job, 'screen' | 'image' | 'papers' | 'materials'>): PlannedPress {
  const problems: Problem[] = [];
  const { screen } = job;
  const imageMm = [job.image.widthMm, job.image.heightMm] as const;
  const deposit = (screen && attempt(problems, () => depositOf(screen.mesh, screen.transfer))) ?? depositOf(usualMesh);
  const leastDetailMm = Math.min(1, ...job.materials.map((m) => Math.min(m.leastOpeningMm, m.leastBridgeMm)));
  const meshes = [...adviseMesh({ leastDetailMm })].sort((a, b) => a.mesh.perCm - b.mesh.perCm || a.mesh.threadMicrons - b.mesh.threadMicrons);
  const gap = adviseGap(imageMm, screen?.tensionNPerCm);
  const gapMm = screen?.offContactMm ?? gap.gapMm;
  if (!screen) {
    problems.push(problem('note', 'no-screen', 'screen', `No screen is chosen yet: films and grams are for a usual mesh (${usualMesh.perCm} threads a cm).`, 'Enter frame and mesh to plan the press.'));
    return { screenKnown: false, deposit, meshes, gap, gapMm, fit: null, taping: null, offContact: null, risers: null, problems };
  }
  const frameInsideMm = [screen.insideWidthMm, screen.insideHeightMm] as const;
  const largest = job.papers.reduce<readonly [number, number] | undefined>((most, p) => [Math.max(most?.[0] ?? 0, p.widthMm), Math.max(most?.[1] ?? 0, p.heightMm)], undefined);
  const fit = attempt(problems, () => fitScreen({ frameInsideMm, imageMm, sheetMm: largest, squeegeeMm: screen.squeegeeMm, hingeSide: screen.hinge }));
  if (fit) problems.push(...fit.problems);
  const taping = fit && attempt(problems, () => tapingPlan({ frameInsideMm, imageMm, imageAtMm: fit.imageAtMm }));
  const stretched = fit && attempt(problems, () => offContact({ frameInsideMm, imageMm, imageAtMm: fit.imageAtMm, hingeSide: screen.hinge, gapMm, squeegeeMm: screen.squeegeeMm }));
  if (stretched) problems.push(...stretched.problems);
  const risers = fit && screen.hingeLiftMm !== undefined ? attempt(problems, () => {
    const alongY = fit.strokeAxis === 'y';
    const length = alongY ? screen.insideHeightMm : screen.insideWidthMm;
    const from = alongY ? fit.imageAtMm[1] : fit.imageAtMm[0];
    const size = alongY ? imageMm[1] : imageMm[0];
    const near = screen.hinge === 'top' || screen.hinge === 'left' ? from : length - from - size;
    return risersFor({
      gapMm, paperMm: Math.max(0.05, ...job.papers.map((p) => p.thicknessMm)), stencilMm: Math.max(0.05, ...job.materials.map((m) => m.thicknessMm)),
      hingeLiftMm: screen.hingeLiftMm as number, frameLengthMm: length, imageFromHingeMm: [near, near + size],
      boardsMm: screen.riserStepMm === undefined ? [] : [screen.riserStepMm],
    });
  }) : null;
  if (risers) problems.push(...risers.problems);
  return { screenKnown: true, deposit, meshes, gap, gapMm, fit, taping, offContact: stretched, risers, problems };
}
