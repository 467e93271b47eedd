import type { Job, JobLayer } from '../../../job/index.ts';
import { growthBetween, offContact, risersFor, type OffContact, type Risers, type ScreenFit } from '../../../press/index.ts';
import { problem, ProblemError, type Problem } from '../../../problem.ts';
import { length, name as asName, say, sentences, share } from '../../../../words/say.ts';

/** One run's gap, and what it does to the size of the image. */
export interface PlannedGap {
  readonly layerId: string;
  readonly gapMm: number;
  /** The run has a gap of its own; else the screen's. */
  readonly own: boolean;
  readonly growth: OffContact | null;
  readonly risers: Risers | null;
  /** Against the runs with the screen's gap: growth of the whole image; nought where they are the same. */
  readonly differsMm: { readonly alongMm: number; readonly acrossMm: number };
}

export interface GapSetting {
  readonly fit: ScreenFit | null;
  readonly gapMm: number;
  readonly growth: OffContact | null;
  readonly risers: Risers | null;
}

/** Below this the eye at arm's length sees no difference of size. common practice */
const seenMm = 0.05;

export function stretchAt(job: Pick<Job, 'screen' | 'image'>, fit: ScreenFit, gapMm: number): OffContact {
  const screen = job.screen!;
  return offContact({
    frameInsideMm: [screen.insideWidthMm, screen.insideHeightMm],
    imageMm: [job.image.widthMm, job.image.heightMm],
    imageAtMm: fit.imageAtMm,
    hingeSide: screen.hinge,
    gapMm,
    squeegeeMm: screen.squeegeeMm,
  });
}

/** null: nobody has measured how high the hinge holds the mesh. */
export function risersAt(job: Pick<Job, 'screen' | 'image' | 'papers' | 'materials'>, fit: ScreenFit, gapMm: number): Risers | null {
  const screen = job.screen!;
  if (screen.hingeLiftMm === undefined) return null;
  const alongY = fit.strokeAxis === 'y';
  const length = alongY ? screen.insideHeightMm : screen.insideWidthMm;
  const from = alongY ? fit.imageAtMm[1] : fit.imageAtMm[0];
  const size = alongY ? job.image.heightMm : job.image.widthMm;
  const near = screen.hinge === 'top' || screen.hinge === 'left' ? from : length - from - size;
  return risersFor({
    gapMm,
    paperMm: Math.max(0.05, ...job.papers.map((p) => p.thicknessMm)),
    stencilMm: Math.max(0.05, ...job.materials.map((m) => m.thicknessMm)),
    hingeLiftMm: screen.hingeLiftMm,
    frameLengthMm: length,
    imageFromHingeMm: [near, near + size],
    boardsMm: screen.riserStepMm === undefined ? [] : [screen.riserStepMm],
  });
}

/** Every layer's gap: runs with gaps of their own print the image at another size than the rest. */
export function planGaps(
  job: Pick<Job, 'screen' | 'image' | 'papers' | 'materials'>,
  layers: readonly Pick<JobLayer, 'id' | 'name' | 'offContactMm'>[],
  usual: GapSetting,
): { readonly gaps: readonly PlannedGap[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const gaps = layers.map((layer): PlannedGap => {
    const gapMm = layer.offContactMm ?? usual.gapMm;
    const own = layer.offContactMm !== undefined && Math.abs(gapMm - usual.gapMm) > 1e-9;
    const none = { alongMm: 0, acrossMm: 0 };
    if (!own || !usual.fit)
      return { layerId: layer.id, gapMm, own, growth: usual.growth, risers: own ? null : usual.risers, differsMm: none };
    try {
      const growth = stretchAt(job, usual.fit, gapMm);
      const risers = risersAt(job, usual.fit, gapMm);
      problems.push(...growth.problems.map((p) => ofRun(p, layer.id)));
      return { layerId: layer.id, gapMm, own, growth, risers, differsMm: usual.growth ? growthBetween(growth, usual.growth) : none };
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      problems.push(...error.problems.map((p) => ofRun(p, layer.id)));
      return { layerId: layer.id, gapMm, own, growth: null, risers: null, differsMm: none };
    }
  });
  return { gaps, problems };
}

/** Where a run has a gap of its own, a problem of the gap is that run's and not the screen's. */
function ofRun(p: Problem, layerId: string): Problem {
  return p.path === 'screen.offContactMm' ? { ...p, path: gapPath(layerId) } : p;
}

const gapPath = (layerId: string): string => `layers[#${layerId}].offContactMm`;

/** Growth of the image along x and y, mm over the whole image. */
export function growthXY(growth: OffContact, stroke: ScreenFit['strokeAxis']): readonly [number, number] {
  const across = Math.max(...growth.acrossMm);
  return stroke === 'y' ? [across, growth.alongMm] : [growth.alongMm, across];
}

/**
 * Layers whose gaps make them fit badly: how much, what share of the register it takes, and the gap that would do. `forgives`:
 * overlap of the tightest pair that the layer is in; null where it only lies over others.
 */
export function gapProblems(
  job: Pick<Job, 'screen' | 'image'>,
  layers: readonly Pick<JobLayer, 'id' | 'name'>[],
  press: GapSetting & { readonly gaps: readonly PlannedGap[] },
  toleranceMm: number,
  forgives: (layerId: string) => number | null,
): Problem[] {
  return press.gaps.flatMap((gap, run) => {
    const edgeMm = Math.max(gap.differsMm.alongMm, gap.differsMm.acrossMm) / 2;
    if (!gap.own || edgeMm < seenMm || !press.fit || !press.growth) return [];
    const has = forgives(gap.layerId);
    const budgetMm = Math.max(has ?? 0, toleranceMm);
    const takes = edgeMm / budgetMm;
    const budget =
      has !== null && has >= toleranceMm
        ? say('press.ofWhatDrawingForgives', { share: share(takes, 0), forgives: length(has, 1) })
        : say('press.ofWhatLayerMayBeOff', { share: share(takes, 0), tolerance: length(toleranceMm, 1) });
    const best = gapThatFits(job, press.fit, press.growth, press.gapMm, gap.gapMm, budgetMm / 4);
    return [
      problem(
        takes > 0.25 ? 'warning' : 'note',
        'gaps-differ',
        gapPath(gap.layerId),
        sentences(
          say(gap.gapMm > press.gapMm ? 'press.gapPrintsLarger' : 'press.gapPrintsSmaller', {
            run: run + 1,
            layer: asName(layers.find((layer) => layer.id === gap.layerId)?.name ?? gap.layerId),
            gap: length(gap.gapMm, 1),
            usual: length(press.gapMm, 1),
            across: length(gap.differsMm.acrossMm, 2),
            along: length(gap.differsMm.alongMm, 2),
            edge: length(edgeMm, 2),
          }),
          budget,
        ),
        takes > 0.25 ? say('press.oneGap', { best: length(best, 1) }) : say('press.mindWhereItMeets'),
      ),
    ];
  });
}

/** The gap nearest to the wanted one whose image's edges lie no farther off than `mostMm`. */
function gapThatFits(
  job: Pick<Job, 'screen' | 'image'>,
  fit: ScreenFit,
  usual: OffContact,
  usualMm: number,
  wantedMm: number,
  mostMm: number,
): number {
  let best = usualMm;
  const step = wantedMm > usualMm ? 0.1 : -0.1;
  for (let gap = usualMm + step; step > 0 ? gap < wantedMm : gap > Math.max(0, wantedMm); gap += step) {
    const between = growthBetween(stretchAt(job, fit, gap), usual);
    if (Math.max(between.alongMm, between.acrossMm) / 2 > mostMm) break;
    best = gap;
  }
  return best;
}
