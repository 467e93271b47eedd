import { splitPicture, toneForesight, type Split, type ToneModel, type ToneReach } from '../halftone/index.ts';
import { freshId, parseJob, type Job, type JobLayer, type JobTone } from '../job/index.ts';
import { plan } from '../plan/index.ts';
import { fail } from '../problem.ts';
import { cropOf, scaledCodes, type Crop, type Picture } from '../image/index.ts';
import { quietTask, type Task } from '../task.ts';
import { list, name as asName, say } from '../../words/say.ts';

export interface SplitQuestion {
  /** Inks of the shelf, each at a strength; a run of tone that the job has in that ink is taken with its screen and its wedge. */
  readonly inks: readonly { readonly id: string; readonly strength?: number }[];
  readonly paperId?: string;
  readonly crop?: Crop;
  /** Most that all films cover together, in whole layers. */
  readonly limit?: number;
  readonly greyShare?: number;
  readonly reach?: ToneReach;
  readonly tone?: Partial<Pick<JobTone, 'by' | 'shape' | 'rulingPerCm'>>;
}

export interface SplitAnswer {
  /** The job's shelf, papers and screen, with a run of tone for each ink, light first. */
  readonly job: Job;
  /** One for each of its layers: what the film covers, as the grey picture that its tone names. */
  readonly films: readonly {
    readonly layer: string;
    readonly path: string;
    readonly plane: Uint8Array;
    /** Share of the image that the film covers. */
    readonly mean: number;
  }[];
  readonly width: number;
  readonly height: number;
  readonly mmPerPx: number;
  readonly split: Split;
  /** Share of the picture that sRGB can't say: it reaches the inks all the same, as the file's own profile has it. */
  readonly beyondSrgb: number;
  readonly model: ToneModel;
}

export const fewestInks = 1,
  mostInks = 6;
/** As fine as a proof is painted: no film of a hand print holds more [S46]. */
const finestPixelsPerMm = 300 / 25.4;

/** A picture into runs of tone in inks of the shelf. */
export async function askSplit(job: Job, picture: Picture, question: SplitQuestion, task: Task = quietTask): Promise<SplitAnswer> {
  const { inks, paperId } = question;
  const shelf = job.inks.filter((ink) => ink.role === 'ink');
  if (inks.length < fewestInks || inks.length > mostInks)
    fail(
      'split-inks',
      'inks',
      say('halftone.splitInks', { least: fewestInks, most: mostInks }),
      say('halftone.nameInks', { ids: idsOf(shelf) }),
    );
  for (const { id } of inks)
    if (!shelf.some((ink) => ink.id === id))
      fail('no-such-ink', 'inks', say('halftone.noSuchInk', { ink: asName(id) }), say('halftone.nameInks', { ids: idsOf(shelf) }));
  const ordered = lightFirst(withTones(job, question), paperId);
  const model = modelOf(ordered, paperId);

  const crop = cropOf(question.crop, picture, job.image);
  const most = Math.max(1, Math.round(job.image.widthMm * finestPixelsPerMm));
  const width = Math.max(1, Math.min(most, Math.round(crop.width * picture.width)));
  const height = Math.max(1, Math.round((width * job.image.heightMm) / job.image.widthMm));
  const { rgb, space, beyondSrgb } = scaledCodes(picture, crop, width, height);
  const split = await splitPicture(
    { model, rgb, space, width, height, limit: question.limit, greyShare: question.greyShare, reach: question.reach },
    task,
  );
  return {
    job: ordered,
    films: ordered.layers.map((layer, i) => {
      const plane = split.planes[i];
      const mean = plane.reduce((sum, v) => sum + v, 0) / plane.length / 255;
      return { layer: layer.id, path: layer.tone!.picture!, plane, mean };
    }),
    width,
    height,
    mmPerPx: job.image.widthMm / width,
    split,
    beyondSrgb,
    model,
  };
}

const idsOf = (things: readonly { readonly id: string }[]): ReturnType<typeof list> =>
  list(
    things.map(({ id }) => asName(id)),
    'comma',
  );

/** The job with nothing but runs of tone in these inks, on the whole image. */
function withTones(job: Job, { inks, tone }: SplitQuestion): Job {
  const taken: { id: string }[] = [];
  const base = job.inks.find((k) => k.role === 'transparent-base')?.id;
  const layers = inks.map(({ id, strength }): Partial<JobLayer> => {
    const own = job.layers.find((l) => l.tone && l.ink === id && (strength === undefined || l.strength === strength));
    const layerId = own?.id ?? freshId(taken, id);
    taken.push({ id: layerId });
    return {
      id: layerId,
      name: job.inks.find((k) => k.id === id)?.name ?? id,
      side: 'window',
      ink: id,
      strength: strength ?? 1,
      ...(base === undefined ? {} : { base }),
      ...own,
      cut: undefined,
      off: false,
      tone: { by: 'dots', shape: 'round', reads: 'coverage', ...own?.tone, ...tone, picture: `tones/${layerId}.png` },
    };
  });
  const ids = new Set(layers.map((l) => l.id));
  const reads = (r: { readonly layers: readonly string[] }): boolean => r.layers.every((id) => ids.has(id));
  return parseJob({
    ...job,
    done: undefined,
    picture: undefined,
    forms: [],
    cuts: [],
    layers,
    wanted: job.wanted.filter(reads),
    proofReadings: job.proofReadings.filter(reads),
    potLogs: [],
  });
}

/** The tones of a job on one paper, whatever its image: films have no size. */
export function modelOf(job: Job, paperId: string | undefined): ToneModel {
  const small = {
    ...job,
    image: { ...job.image, widthMm: 20, heightMm: 20 },
    forms: [],
    cuts: [],
    layers: job.layers.map((layer) => ({ ...layer, cut: undefined, tone: { ...layer.tone, picture: undefined, share: 0.5 } })),
  };
  const made = plan({ job: parseJob(small), attachments: new Map() });
  const paper = made.papers.find((p) => paperId === undefined || p.id === paperId);
  if (!paper?.tones || paper.tones.layers.length !== job.layers.length)
    fail('split-without-readings', 'inks', say('halftone.splitUnread'), say('halftone.readFirst'));
  return paper.tones.model;
}

/** Light inks are printed first: what is out of register shows less, and darks stay clean. */
function lightFirst(job: Job, paperId: string | undefined): Job {
  const model = modelOf(job, paperId);
  const { lab } = toneForesight(model);
  const light = job.layers.map((_, i) => lab(job.layers.map((__, j) => (j === i ? 1 : 0)))[0]);
  const order = job.layers.map((_, i) => i).sort((a, b) => light[b] - light[a] || a - b);
  return { ...job, layers: order.map((i) => job.layers[i]) };
}
