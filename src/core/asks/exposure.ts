import { bestExposure, leastDotMicrons, stripRows, type ExposedRow, type ExposureFound } from '../halftone/index.ts';
import type { Job } from '../job/index.ts';
import type { Plan } from '../plan/index.ts';
import { fail } from '../problem.ts';
import { name as asName, say, type Saying } from '../../words/say.ts';

export interface ExposureAnswer extends ExposureFound {
  /** What the run's films may hold from now on: no smaller than the mesh prints. */
  readonly takenMicrons: number;
}

/**
 * `5-95, 3-97, -`: of each row the lightest tint that washed open and the darkest whose dots stood; a dash where nothing was held.
 * @throws ProblemError where a row is no span
 */
export function readRows(text: string, place: Saying): (ExposedRow | null)[] {
  const rows = text
    .split(/[,;\s]+/)
    .filter((one) => one !== '')
    .map((one): ExposedRow | null => {
      if (/^[-–—x]$/i.test(one)) return null;
      const found = /^(\d+(?:\.\d+)?)%?[-–](\d+(?:\.\d+)?)%?$/.exec(one);
      const [open, held] = found ? [Number(found[1]) / 100, Number(found[2]) / 100] : [1, 0];
      if (!(open < held && held <= 1)) fail('strip-row', place, say('halftone.notARow', { text: asName(one) }), say('halftone.writeRows'));
      return { open, held };
    });
  if (rows.length === 0 || rows.length > stripRows)
    fail('strip-rows', place, say('halftone.rowsWanted', { most: stripRows }), say('halftone.writeRows'));
  return rows;
}

/** The exposure that a washed-out test strip speaks for, and the smallest dot it held on this run's ruling. */
export function askExposure(
  plan: Pick<Plan, 'layers' | 'press'>,
  layerId: string,
  firstSeconds: number,
  rows: readonly (ExposedRow | null)[],
): ExposureAnswer {
  const layer = plan.layers.find((l) => l.id === layerId);
  if (!layer?.tone) fail('no-tone', `layers[#${layerId}]`, say('halftone.noToneRun'), say('halftone.giveTone'));
  const found = bestExposure(firstSeconds, rows, layer.tone.rulingPerCm);
  if (!found) fail('strip-empty', say('where.exposureStrip'), say('halftone.stripHeldNothing'), say('halftone.stripAgain'));
  const { mesh } = (plan.press.runs.find((r) => r.layerId === layerId) ?? plan.press).deposit;
  const meshLeast = leastDotMicrons(mesh);
  return { ...found, takenMicrons: Math.max(Math.round(meshLeast), found.leastDotMicrons) };
}

/** The job with what a strip showed, on every run of tone that is printed through the same mesh. */
export function withExposure(job: Job, plan: Pick<Plan, 'layers'>, layerId: string, found: ExposureAnswer): Job {
  const mesh = plan.layers.find((l) => l.id === layerId)?.tone?.meshPerCm;
  const alike = new Set(plan.layers.flatMap((l) => (l.tone && l.tone.meshPerCm === mesh ? [l.id] : [])));
  return {
    ...job,
    layers: job.layers.map((l) =>
      l.tone && alike.has(l.id)
        ? { ...l, tone: { ...l.tone, leastDotMicrons: found.takenMicrons, exposeSeconds: Math.round(found.seconds * 10) / 10 } }
        : l,
    ),
  };
}
