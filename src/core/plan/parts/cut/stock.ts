import type { Job } from '../../../job/index.ts';

type JobMaterial = Job['materials'][number];
import { problem, type Problem } from '../../../problem.ts';
import { edgesOnStock, layOnStock, type EdgeLine, type ToCut } from '../../../cutfile/index.ts';
import type { PlannedCut, PlannedLayer } from '../../planned.ts';
import { lengths, name, say } from '../../../../words/say.ts';

/** One stencil's place on a sheet of stock. */
export interface PlacedOnStock {
  /** 1, 2, … on its sheet, from the top left. */
  readonly number: number;
  /** The stencil that is cut. */
  readonly layerId: string;
  /** Layers that it serves: two where the piece that drops out is a stencil too. */
  readonly layers: readonly string[];
  /** Its top left corner on the stock, and its size as it lies there. */
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Lies a quarter turn clockwise: its top is on the right. */
  readonly turned: boolean;
}

/** A sheet of stock with stencils laid on it. */
export interface PlannedStock {
  /** 1, 2, … over all materials: the number in its file's name. */
  readonly number: number;
  readonly materialId: string;
  /** As the studio wrote it. */
  readonly materialName: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly grainMatters: boolean;
  readonly kerfMm: number;
  /** Sheets to cut just like this one. */
  readonly times: number;
  readonly placed: readonly PlacedOnStock[];
  /** Where stencils part from one another and from the offcut. */
  readonly edges: readonly EdgeLine[];
  /** Share of the stock that is used. */
  readonly usedShare: number;
}

/** More copies than this are cut like the first ones. */
const mostCopies = 60;

/**
 * Every stencil of a material that names its stock, as often as it must be cut, laid on as few sheets as are found. By
 * their sheets, not by their outlines: each stencil needs its whole sheet, whose border closes the screen and lies against
 * the stops, and its loose pieces come out of its own image. What drops out of a window is used where the cut has a piece
 * (`CutPlan.sets`), and is too small for another sheet. So nothing lies in another's hollow, and neighbours share a ruler's cut.
 */
export function planStock(
  job: Pick<Job, 'materials'>,
  cuts: readonly PlannedCut[],
  layers: readonly PlannedLayer[],
): { readonly sheets: PlannedStock[]; readonly problems: Problem[] } {
  const sheets: PlannedStock[] = [];
  const problems: Problem[] = [];
  for (const material of job.materials) {
    const { stock, kerfMm = 0 } = material;
    if (!stock) continue;
    const wanted = fitting(material, stock, wantedOf(material, cuts, layers), problems);
    for (const { placed, times } of alike(lay(material, stock, wanted))) {
      sheets.push({
        number: sheets.length + 1,
        materialId: material.id,
        materialName: material.name,
        widthMm: stock.widthMm,
        heightMm: stock.heightMm,
        grainMatters: stock.grainMatters,
        kerfMm,
        times,
        placed,
        edges: edgesOnStock({ ...stock, kerfMm, placed }),
        usedShare: placed.reduce((sum, p) => sum + p.widthMm * p.heightMm, 0) / (stock.widthMm * stock.heightMm),
      });
    }
  }
  return { sheets, problems };
}

interface Wanted {
  readonly layer: PlannedLayer;
  readonly serves: readonly string[];
  readonly copies: number;
}

type StockOf = NonNullable<JobMaterial['stock']>;
const placeOf = (material: JobMaterial): string => `materials[#${material.id}].stock`;

/** What is to be cut from a material, and how often. */
function wantedOf(material: JobMaterial, cuts: readonly PlannedCut[], layers: readonly PlannedLayer[]): Wanted[] {
  return cuts
    .filter((c) => c.materialId === material.id)
    .flatMap((cut) => cut.sets)
    .flatMap((set): Wanted[] => {
      const layer = layers.find((l) => l.id === set.layerId);
      return layer ? [{ layer, serves: set.serves, copies: set.sheets.length }] : [];
    });
}

/** Those that go on a whole sheet; the others, and too many copies, are problems. */
function fitting(material: JobMaterial, stock: StockOf, wanted: readonly Wanted[], problems: Problem[]): Wanted[] {
  const room = [stock.widthMm - 2 * stock.marginMm, stock.heightMm - 2 * stock.marginMm] as const;
  const fits = wanted.filter((one) => {
    const { width, height } = sizeOf(one.layer);
    if ((width <= room[0] && height <= room[1]) || (!stock.grainMatters && height <= room[0] && width <= room[1])) return true;
    const said = say('plan.largerThanStock', {
      layer: name(one.layer.name),
      size: lengths([width, height], '×', 0),
      stock: lengths([stock.widthMm, stock.heightMm]),
    });
    problems.push(problem('warning', 'stock-too-small', placeOf(material), said, say('plan.largerStockOrTape')));
    return false;
  });
  if (fits.some((one) => one.copies > mostCopies)) {
    const said = say('plan.manyCopies', { most: mostCopies });
    problems.push(problem('note', 'stock-copies', placeOf(material), said, say('plan.lastingMaterial')));
  }
  return fits;
}

/** Every copy on its sheet: sheets in order, places from the top left. */
function lay(material: JobMaterial, stock: StockOf, wanted: readonly Wanted[]): PlacedOnStock[][] {
  const byId = new Map<string, Wanted>();
  const things = wanted.flatMap((one, i) =>
    Array.from({ length: Math.min(one.copies, mostCopies) }, (_, k): ToCut => {
      const id = `${i}:${k}`;
      byId.set(id, one);
      const { width, height } = sizeOf(one.layer);
      return { id, widthMm: width, heightMm: height, mayTurn: !stock.grainMatters };
    }),
  );
  const size = { widthMm: stock.widthMm, heightMm: stock.heightMm, marginMm: stock.marginMm, gapMm: material.kerfMm ?? 0 };
  const laid = layOnStock(things, size, placeOf(material));
  const sheets: PlacedOnStock[][] = [];
  for (let sheet = 1; laid.some((l) => l.sheet === sheet); sheet++) {
    const on = laid.filter((l) => l.sheet === sheet).sort((a, b) => a.yMm - b.yMm || a.xMm - b.xMm);
    sheets.push(
      on.map((l, i): PlacedOnStock => {
        const one = byId.get(l.id)!;
        const { width, height } = sizeOf(one.layer);
        const [widthMm, heightMm] = l.turned ? [height, width] : [width, height];
        const { xMm, yMm, turned } = l;
        return { number: i + 1, layerId: one.layer.id, layers: one.serves, xMm, yMm, widthMm, heightMm, turned };
      }),
    );
  }
  return sheets;
}

/** Sheets that are laid the same are one drawing, cut several times. */
function alike(sheets: readonly PlacedOnStock[][]): { placed: PlacedOnStock[]; times: number }[] {
  const found = new Map<string, { placed: PlacedOnStock[]; times: number }>();
  for (const placed of sheets) {
    const key = JSON.stringify(placed);
    const known = found.get(key);
    if (known) known.times++;
    else found.set(key, { placed, times: 1 });
  }
  return [...found.values()];
}

function sizeOf(layer: PlannedLayer): { readonly width: number; readonly height: number } {
  const { sheet } = layer.stencil;
  return { width: sheet.maxX - sheet.minX, height: sheet.maxY - sheet.minY };
}
