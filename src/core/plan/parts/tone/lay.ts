import type { JobBundle } from '../../../job/index.ts';
import type { Codes, RgbPicture } from '../../../print/index.ts';
import { pick, type Memory } from '../../memory.ts';
import type { PlannedTone } from '../../planned.ts';
import { coloursOn } from '../colour/papers.ts';
import type { FoundInks } from '../colour/inks.ts';
import type { PrintedLayer } from '../colour/let-down.ts';
import type { CutLayer } from '../cut/stencils.ts';
import { tonesOn, type PlannedTones } from './models.ts';
import { meansOf, pictureOf, tonePlanes, withDots, type ToneTask } from './planes.ts';
import { isTone, type ToneScreen } from './screens.ts';

export interface LaidTones {
  /** Cut layers' codes with the dots of those that carry tone. */
  readonly codes: Codes;
  readonly layers: ReadonlyMap<string, PlannedTone>;
}

/** Puts the tones of a job on its image: what each film covers, and the dots that come of it. */
export function layTheTones(
  bundle: JobBundle & { readonly pictures?: ReadonlyMap<string, RgbPicture> },
  codes: Codes,
  stencils: readonly CutLayer[],
  screens: ReadonlyMap<string, ToneScreen>,
  laydown: readonly PrintedLayer[],
  inks: FoundInks,
  memory: Memory,
): LaidTones {
  if (screens.size === 0) return { codes, layers: new Map() };
  const tones = curvesOf(bundle.job, screens, laydown, inks, memory);
  const tasks = stencils.flatMap(({ layer, stencil, bit }): ToneTask[] => {
    const screen = screens.get(layer.id);
    if (!screen || !isTone(layer)) return [];
    const own = pick(layer, 'id', 'tone');
    return [{ layer: own, bit, prints: stencil.prints, screen, picture: pictureOf(own, bundle.pictures) }];
  });
  const planes = tonePlanes(codes, tasks, tones, memory);
  const layers = tasks.map(({ layer, screen }): [string, PlannedTone] => {
    const plane = planes.get(layer.id)!;
    const curve = tones?.model.curves[tones.layers.indexOf(layer.id)];
    return [layer.id, { ...screen, plane, ...memory.part(`tone means ${layer.id}`, { plane, curve }, meansFrom) }];
  });
  return { codes: withDots(codes, tasks, planes, tones, memory), layers: new Map(layers) };
}

const meansFrom = ({ plane, curve }: { plane: Uint8Array; curve: Parameters<typeof meansOf>[1] }): ReturnType<typeof meansOf> =>
  meansOf(plane, curve);

/** Tone curves on the first paper that wedges were read on, else on the first that was read: all papers share the films. */
function curvesOf(
  job: JobBundle['job'],
  screens: ReadonlyMap<string, ToneScreen>,
  laydown: readonly PrintedLayer[],
  inks: FoundInks,
  memory: Memory,
): PlannedTones | null {
  const read = job.papers.filter((p) => inks.papers.has(p.id));
  const paper = read.find((p) => job.proofReadings.some((r) => r.paper === p.id && r.coverages?.some((c) => c > 0 && c < 1))) ?? read[0];
  if (!paper) return null;
  return memory.part('tone curves', { paper: pick(paper, 'id'), job: pick(job, 'proofReadings'), inks, laydown, screens }, makeCurves);
}

interface CurveReads {
  readonly paper: { readonly id: string };
  readonly job: Pick<JobBundle['job'], 'proofReadings'>;
  readonly inks: FoundInks;
  readonly laydown: readonly PrintedLayer[];
  readonly screens: ReadonlyMap<string, ToneScreen>;
}

function makeCurves({ paper, job, inks, laydown, screens }: CurveReads): PlannedTones | null {
  const coloured = coloursOn(paper, job, inks, laydown, null);
  return coloured && tonesOn(paper, job, inks, laydown, screens, null, coloured.colours.lab, new Float64Array(1 << laydown.length));
}
