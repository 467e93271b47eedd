import {
  bestAngles,
  edgeSpreadMicrons,
  gainCurve,
  leastDotMicrons,
  usualRuling,
  type DotShape,
  type ToneCurve,
} from '../../../halftone/index.ts';
import type { JobLayer, JobPaper, JobTone } from '../../../job/index.ts';
import type { CompleteMesh } from '../../../press/index.ts';
import { pick, type Memory } from '../../memory.ts';
import { depositOfRun, type PlannedPress } from '../press/press.ts';

/** How a run's tone stands on its film, with all that the job leaves open decided. */
export interface ToneScreen {
  readonly by: JobTone['by'];
  readonly shape: DotShape;
  readonly rulingPerCm: number;
  readonly angleDeg: number;
  /** The smallest dot that is drawn. */
  readonly leastDotMicrons: number;
  /** How far ink runs beyond an edge, until a wedge says better. */
  readonly spreadMicrons: number;
  /** The mesh that it is printed through. */
  readonly meshPerCm: number;
  readonly threadMicrons: number;
  /** As a test strip showed; null: not tried yet. */
  readonly exposeSeconds: number | null;
}

export type ToneLayer = Pick<JobLayer, 'id'> & { readonly tone: JobTone };

export const isTone = (layer: JobLayer): layer is JobLayer & { readonly tone: JobTone } => layer.tone !== undefined;

/** Thinner paper than this counts as thin: ink goes through it and runs [M]. */
const thinMm = 0.1;

/** What is read of a run of tone for its screen. */
interface ScreenReads {
  readonly tones: readonly { readonly id: string; readonly tone: JobTone; readonly mesh: CompleteMesh }[];
  readonly papers: readonly Pick<JobPaper, 'absorbency' | 'thicknessMm'>[];
}

const none: ReadonlyMap<string, ToneScreen> = new Map();

/** The screens of all runs of tone, their angles chosen together where the job leaves them open. */
export function screensOf(
  layers: readonly JobLayer[],
  press: PlannedPress,
  papers: readonly JobPaper[],
  memory: Memory,
): ReadonlyMap<string, ToneScreen> {
  const tones = layers.filter(isTone).map(({ id, tone }) => ({ id, tone, mesh: depositOfRun(press, id).mesh }));
  if (tones.length === 0) return none;
  return memory.part('tone screens', { tones, papers: papers.map((p) => pick(p, 'absorbency', 'thicknessMm')) }, makeScreens);
}

function makeScreens({ tones, papers }: ScreenReads): ReadonlyMap<string, ToneScreen> {
  const drinks = papers.some((p) => p.absorbency === 'high')
    ? 'high'
    : papers.length > 0 && papers.every((p) => p.absorbency === 'low')
      ? 'low'
      : 'usual';
  const thin = papers.some((p) => p.thicknessMm < thinMm);
  const rulings = tones.map(({ tone, mesh }) => tone.rulingPerCm ?? usualRuling(mesh.perCm));
  const dots = tones.flatMap(({ tone, mesh }, i) => (tone.by === 'dots' ? [{ i, oneWay: tone.shape === 'line', mesh }] : []));
  const chosen = bestAngles({
    rulings: dots.map(({ i, oneWay, mesh }) => ({ perCm: rulings[i], oneWay, meshPerCm: mesh.perCm })),
    fixed: dots.map(({ i }) => tones[i].tone.angleDeg),
  });
  return new Map(
    tones.map(({ id, tone, mesh }, i) => [
      id,
      {
        by: tone.by,
        shape: tone.shape,
        rulingPerCm: rulings[i],
        angleDeg: tone.by === 'grain' ? 0 : chosen[dots.findIndex((d) => d.i === i)],
        leastDotMicrons: tone.leastDotMicrons ?? leastDotMicrons(mesh),
        spreadMicrons: edgeSpreadMicrons(mesh.threadMicrons, drinks, thin),
        meshPerCm: mesh.perCm,
        threadMicrons: mesh.threadMicrons,
        exposeSeconds: tone.exposeSeconds ?? null,
      },
    ]),
  );
}

/** What a film's tone comes to on paper by its mesh alone. */
export function usualCurve(screen: ToneScreen): ToneCurve {
  const { by, shape, rulingPerCm, spreadMicrons, leastDotMicrons: least } = screen;
  // Grain has as much edge as dots whose cells are a grain and a gap wide.
  return gainCurve(
    by === 'grain' ? { shape: 'round', rulingPerCm: 10000 / (2 * least), spreadMicrons } : { shape, rulingPerCm, spreadMicrons },
  );
}
