import { regionBox, unite, type DrawingReading, type OpenDrawing, type Region } from '../form/index.ts';
import { freshId, freshName, mostLayers, type Job, type JobCut, type JobForm, type JobLayer } from '../job/index.ts';
import { ownSigma, sigmaOf } from '../press/index.ts';
import { ProblemError } from '../problem.ts';

/** One way of reading a drawing, with what it gives: on the drawing's own page, mm. */
export interface DrawingChoice {
  readonly reading: DrawingReading;
  /** The colour, where the choice is one. */
  readonly colour?: string;
  /** Of what is inked, for a colour. */
  readonly share?: number;
  readonly region: Region;
}

/** Every way of reading a drawing that gives something: all of it, what is dark, and each of its colours, back to front. */
export function drawingChoices(open: OpenDrawing): DrawingChoice[] {
  const tried = (reading: DrawingReading, more: Partial<DrawingChoice> = {}): DrawingChoice[] => {
    try {
      return [{ reading, ...more, region: open.read(reading).region }];
    } catch (error) {
      if (error instanceof ProblemError) return [];
      throw error;
    }
  };
  return [
    ...tried({ what: 'silhouette', white: open.guess.white ?? 'paper' }),
    ...(open.seen.whiteOnTop ? tried({ what: 'silhouette', white: 'shape' }) : []),
    ...(open.seen.colours.length > 1 ? tried({ what: 'dark' }) : []),
    ...(open.seen.colours.length > 1
      ? open.seen.colours.flatMap(({ colour, share }) => tried({ what: 'colours', colours: [colour] }, { colour, share }))
      : []),
  ];
}

/** What lies behind: spread by as much as the register needs, run on under all that lies in front, or only meeting it. */
export type ColourEdges = 'spread' | 'under' | 'meet';
export const colourEdges: readonly ColourEdges[] = ['spread', 'under', 'meet'];

export interface ByColour {
  readonly drawing: string;
  readonly name: string;
  readonly edges: ColourEdges;
  /** Width of the whole; left out: the drawing's own. */
  readonly widthMm?: number;
  readonly middleMm: readonly [number, number];
}

const mostSpreadMm = 3;
const micron = (mm: number): number => Math.round(mm * 1000) / 1000;

/**
 * A drawing as a set of layers: one form, one cut and one open layer for each colour that it shows, what lies behind printed
 * first. Layers beyond what one sheet takes are left out of the print for now.
 */
export function cutsByColour(job: Job, open: OpenDrawing, { drawing, name, edges, widthMm, middleMm }: ByColour): Job {
  const palette = open.seen.colours.map((c) => c.colour);
  const read = palette.map((colour, i): { colour: string; reading: DrawingReading; region: Region } => {
    const colours = edges === 'under' ? palette.slice(i) : [colour];
    const reading: DrawingReading = { what: 'colours', colours };
    return { colour, reading, region: open.read(reading).region };
  });
  const whole = regionBox(unite(read.map((r) => r.region)));
  const k = widthMm === undefined ? 1 : widthMm / (whole.maxX - whole.minX);
  const need = spreadFor(job);
  const forms: JobForm[] = [],
    cuts: JobCut[] = [],
    layers: JobLayer[] = [];
  read.forEach(({ colour, reading, region }, i) => {
    const box = regionBox(region);
    const named = freshName([...job.forms, ...forms], `${name} ${colour}`);
    const form = freshId([...job.forms, ...forms], named),
      cut = freshId([...job.cuts, ...cuts], named);
    forms.push({
      id: form,
      name: named,
      drawing,
      read: { what: 'colours', colours: [...(reading.colours ?? [])] },
      widthMm: micron((box.maxX - box.minX) * k),
    });
    const at = (low: number, high: number, from: number, to: number, middle: number): number =>
      micron(middle + ((low + high) / 2 - (from + to) / 2) * k);
    cuts.push({
      id: cut,
      name: named,
      parts: [
        {
          form,
          how: 'add',
          xMm: at(box.minX, box.maxX, whole.minX, whole.maxX, middleMm[0]),
          yMm: at(box.minY, box.maxY, whole.minY, whole.maxY, middleMm[1]),
          angleDeg: 0,
          scale: 1,
          mirror: false,
        },
      ],
    });
    const printed = [...job.layers, ...layers].filter((l) => !l.off).length;
    layers.push({
      id: freshId([...job.layers, ...layers], named),
      name: named,
      cut,
      side: 'window',
      ink: null,
      strength: 1,
      spreadMm: edges === 'spread' && i < read.length - 1 ? need : 0,
      bridgesBy: 'least-seen',
      off: printed >= mostLayers,
    });
  });
  return { ...job, forms: [...job.forms, ...forms], cuts: [...job.cuts, ...cuts], layers: [...job.layers, ...layers] };
}

/** Twice the standard deviation of one layer against another: nineteen sheets in twenty show no gap. */
function spreadFor(job: Job): number {
  const own = ownSigma(job.register, [job.image.widthMm, job.image.heightMm]);
  const edge = job.papers.some((paper) => paper.edge === 'torn') ? 'torn' : 'cut';
  const { sigmaMm } = sigmaOf(job.register.method, edge, own);
  return Math.min(mostSpreadMm, Math.round(2 * Math.SQRT2 * sigmaMm * 20) / 20);
}
