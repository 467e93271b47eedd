import { ringArea, type Region } from '../../form/index.ts';
import type { SeparatedLayer, Separation } from '../types.ts';
import { printing } from './run-names.ts';

/** The parts of a Job that a separation decides; plain data in the words of the Job document. */
export interface JobParts {
  readonly image: { readonly widthMm: number; readonly heightMm: number };
  readonly forms: readonly {
    readonly id: string;
    readonly name: string;
    readonly outline: readonly (readonly (readonly [number, number])[])[];
  }[];
  readonly cuts: readonly {
    readonly id: string;
    readonly name: string;
    readonly material?: string;
    readonly parts: readonly { readonly form: string; readonly xMm: number; readonly yMm: number }[];
  }[];
  readonly layers: readonly {
    readonly id: string;
    readonly name: string;
    readonly cut: string;
    readonly side: 'window' | 'piece';
    readonly ink: string;
    readonly strength: number;
    readonly islands: 'bridge';
    readonly pinnedBridges?: readonly { fromMm: [number, number]; viaMm?: [number, number][]; toMm: [number, number]; widthMm: number }[];
  }[];
  /** Pots mixed from the shelf; a layer of a single shelf ink names that ink and needs no pot here. */
  readonly inks: readonly {
    readonly id: string;
    readonly name: string;
    readonly from: 'mix';
    readonly parts: readonly { readonly ink: string; readonly parts: number }[];
  }[];
}

export interface JobNaming {
  /** What each run that prints is called (`runNames`, told); where two are alike their pots tell them apart. */
  readonly names: readonly string[];
  readonly materialId?: string;
  readonly inkName?: (id: string) => string;
  /** Names of runs that stay beside these. */
  readonly taken?: readonly string[];
}

/**
 * Forms, cuts, layers and pots of a separation. Outlines are in mm from the image's corner; each form is placed by the middle
 * of its box, as the Job has it. A layer whose stencil prints nothing is left out. Runs are named by what they print, pots after the inks in them,
 * the most first: a name by its place in the order would be wrong as soon as the order changes.
 */
export function jobPartsOf(separation: Separation, { names, materialId, inkName = (id) => id, taken = [] }: JobNaming): JobParts {
  const { image } = separation;
  const live = printing(separation.layers);
  const cutOf = new Map<Region, string>();
  const forms: JobParts['forms'][number][] = [],
    cuts: JobParts['cuts'][number][] = [];
  const layers: JobParts['layers'][number][] = [],
    inks: JobParts['inks'][number][] = [];
  const inPots = live.map((layer) =>
    layer.parts
      .toSorted((a, b) => b.share - a.share)
      .map((part) => inkName(part.id))
      .join(' + ')
      .slice(0, longestName),
  );
  const runs = numbered(apart(names, inPots, taken), taken),
    pots = numbered(inPots, []);
  for (const [i, layer] of live.entries()) {
    const run = layer.run + 1,
      name = runs[i];
    let cut = cutOf.get(layer.region);
    if (cut === undefined) {
      cut = `cut-${run}`;
      cutOf.set(layer.region, cut);
      const form = `form-${run}`;
      const { rings, xMm, yMm } = outlineOf(layer.region);
      forms.push({ id: form, name, outline: rings });
      cuts.push({ id: cut, name, ...(materialId ? { material: materialId } : {}), parts: [{ form, xMm, yMm }] });
    }
    const strength = Math.min(
      1,
      layer.parts.reduce((sum, part) => sum + part.share, 0),
    );
    let ink = layer.parts[0].id;
    if (layer.parts.length > 1) {
      ink = `pot-${run}`;
      inks.push({
        id: ink,
        name: pots[i],
        from: 'mix',
        parts: layer.parts.map((part) => ({ ink: part.id, parts: round(part.share * 1000) })),
      });
    }
    layers.push({ id: `run-${run}`, name, cut, side: layer.side, ink, strength: round(strength), islands: 'bridge', ...pinned(layer) });
  }
  return { image: { widthMm: image.maxX, heightMm: image.maxY }, forms, cuts, layers, inks };
}

/** A name in a Job is no longer than 200 signs; a number may follow. */
const longestName = 190;

/** Names with what is in the pot behind them where they would be alike. */
function apart(names: readonly string[], inPots: readonly string[], taken: readonly string[]): string[] {
  return names.map((name, i) =>
    taken.includes(name) || names.some((other, k) => k !== i && other === name) ? `${name} (${inPots[i]})`.slice(0, longestName) : name,
  );
}

/** The second of a name has a number. */
function numbered(names: readonly string[], taken: readonly string[]): string[] {
  const given = new Set(taken);
  return names.map((name) => {
    let one = name;
    for (let n = 2; given.has(one); n++) one = `${name} ${n}`;
    given.add(one);
    return one;
  });
}

/** Bridges stay where they were laid and shown: they were laid with the picture in view, which the job alone does not have. */
function pinned({ stencil: { bridges } }: SeparatedLayer): Pick<JobParts['layers'][number], 'pinnedBridges'> {
  if (bridges.length === 0) return {};
  return {
    pinnedBridges: bridges.map(({ line, widthMm }) => {
      const points = Array.from({ length: line.length / 2 }, (_, i): [number, number] => [round(line[2 * i]), round(line[2 * i + 1])]);
      const via = points.slice(1, -1);
      return { fromMm: points[0], ...(via.length > 0 ? { viaMm: via } : {}), toMm: points[points.length - 1], widthMm: round(widthMm) };
    }),
  };
}

function outlineOf(region: Region): { readonly rings: (readonly [number, number])[][]; readonly xMm: number; readonly yMm: number } {
  let minX = Infinity,
    minY = Infinity,
    maxX = -Infinity,
    maxY = -Infinity;
  const rings = region.rings
    .filter((ring) => Math.abs(ringArea(ring)) > 1e-6)
    .map((ring) => {
      const points: (readonly [number, number])[] = [];
      for (let i = 0; i < ring.length; i += 2) {
        const x = round(ring[i]),
          y = round(ring[i + 1]);
        minX = Math.min(minX, x);
        maxX = Math.max(maxX, x);
        minY = Math.min(minY, y);
        maxY = Math.max(maxY, y);
        points.push([x, y]);
      }
      return points;
    });
  return { rings, xMm: round((minX + maxX) / 2), yMm: round((minY + maxY) / 2) };
}

/** Microns and thousandths are as fine as anything here is cut or weighed. */
function round(v: number): number {
  return Math.round(v * 1000) / 1000;
}
