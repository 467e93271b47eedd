import type { Region } from '../../../form/index.ts';
import type { Material } from '../../../stencil/index.ts';
import type { CutSet, CutUse, PlannedLayer } from '../../planned.ts';
import { say, sentences, type Saying } from '../../../../words/say.ts';

export interface CutPlan {
  readonly timesToCut: number;
  readonly why: Saying;
  readonly uses: readonly CutUse[];
  readonly sets: readonly CutSet[];
  /** Knife work for every sheet that is cut. */
  readonly knifeMetres: number;
  readonly knifeMinutes: number;
}

type Served = Pick<PlannedLayer, 'id' | 'run' | 'side' | 'sheetsThrough' | 'stencil'>;

export interface StencilGroup<L extends Pick<Served, 'side' | 'stencil'> = Served> {
  readonly side: 'window' | 'piece';
  readonly layers: L[];
}

/**
 * One cut gives a window and what drops out of it. Which run takes which, what is spent after its run, what must be kept
 * for a later one, and how many sheets must be cut in all. `served` in laydown order; paper that can't be washed serves one
 * run only; nothing prints more pulls than the lower end of what its material lasts.
 */
export function planCut(
  served: readonly Served[],
  spreads: ReadonlyMap<string, number>,
  material: Pick<Material, 'name' | 'prints' | 'washable'>,
  kerfMm: number,
): CutPlan {
  const lasts = Math.max(1, material.prints[0]);
  const groups = stencilGroups(served);
  const window = groups.find((g) => g.side === 'window'),
    piece = groups.find((g) => g.side === 'piece');
  const alone = groups.length > 1 ? whyAlone(groups, window, piece, spreads, kerfMm) : undefined;
  const pair = window !== undefined && piece !== undefined && alone === undefined;

  const uses: CutUse[] = [];
  const sets: CutSet[] = [];
  let sheets = 0;
  for (const group of groups) {
    // Window and piece of a pair count their sheets from 1 alike: each cut gives one of both.
    const from = pair ? 0 : sheets;
    const used = sheetsOf(group, from, lasts, material.washable, uses);
    sheets = Math.max(sheets, from + used);
    if (!pair) sets.push({ layerId: group.layers[0].id, serves: group.layers.map((l) => l.id), sheets: numbers(from, used) });
  }
  if (pair) sets.push({ layerId: window.layers[0].id, serves: served.map((l) => l.id), sheets: numbers(0, sheets) });
  uses.sort((a, b) => a.run - b.run);
  const kept = pair
    ? uses.map((use): CutUse => ({ ...use, ...laterOtherSide(use, uses), border: use.side === 'piece' ? 'tape-on-edge' : 'sheet' }))
    : uses;
  const timesToCut = Math.max(1, sheets);
  const knife = (of: 'metres' | 'minutes'): number =>
    sets.reduce((sum, set) => sum + set.sheets.length * (served.find((l) => l.id === set.layerId)?.stencil.knife[of] ?? 0), 0);
  return {
    knifeMetres: knife('metres'),
    knifeMinutes: knife('minutes'),
    timesToCut,
    why: reasons(groups, timesToCut, pair, alone, lasts, material),
    uses: kept,
    sets,
  };
}

/** Layers of one cut that one and the same knife path serves, side by side with those that need their own. */
export function stencilGroups<L extends Pick<Served, 'side' | 'stencil'>>(served: readonly L[]): StencilGroup<L>[] {
  const groups: StencilGroup<L>[] = [];
  for (const layer of served) {
    const same = groups.find((g) => g.side === layer.side && samePaths(g.layers[0].stencil.cutLines, layer.stencil.cutLines));
    if (same) same.layers.push(layer);
    else groups.push({ side: layer.side, layers: [layer] });
  }
  return groups;
}

/** Why what drops out of the window is not the piece; undefined where it is. */
function whyAlone(
  groups: readonly StencilGroup[],
  window: StencilGroup | undefined,
  piece: StencilGroup | undefined,
  spreads: ReadonlyMap<string, number>,
  kerfMm: number,
): Saying | undefined {
  if (groups.some((g) => g.layers.some((l) => (spreads.get(l.id) ?? 0) !== 0))) return say('plan.spreadCutAlone');
  if (groups.length > 2 || !window || !piece) return say('plan.bridgesDiffer');
  if (window.layers[0].stencil.bridges.length > 0) return say('plan.bridgesInPiece');
  if (piece.layers[0].stencil.bridges.length > 0) return say('plan.pieceOnBridges');
  return kerfMm > 0 ? say('plan.kerfOffPiece') : undefined;
}

/** Gives each run of a group its sheets, from number `from` + 1 on; how many in all. */
function sheetsOf(group: StencilGroup, from: number, lasts: number, washable: boolean, uses: CutUse[]): number {
  let sheet = 1,
    left = lasts;
  group.layers.forEach((layer, i) => {
    const { id, run, side, sheetsThrough: pulls } = layer;
    const taken = new Set<number>();
    let still = Math.max(1, pulls);
    while (still > 0) {
      if (left === 0) {
        sheet++;
        left = lasts;
      }
      taken.add(from + sheet);
      const now = Math.min(left, still);
      left -= now;
      still -= now;
    }
    const next = group.layers[i + 1];
    const again = washable && next !== undefined && left > 0;
    uses.push({
      layerId: id,
      run,
      side,
      sheets: [...taken],
      pulls,
      border: 'sheet',
      after: !washable ? 'spent' : again ? 'wash' : 'done',
      ...(again ? { againInRun: next.run } : {}),
    });
    // Paper comes off the mesh in shreds: what is left of its life is of no use.
    if (!washable && next !== undefined) left = 0;
  });
  return sheet;
}

function laterOtherSide(use: CutUse, uses: readonly CutUse[]): { readonly keepForRun?: number } {
  const later = uses.find((other) => other.run > use.run && other.side !== use.side && other.sheets.some((s) => use.sheets.includes(s)));
  const earlier = uses.some((other) => other.run < use.run && other.side !== use.side && other.sheets.some((s) => use.sheets.includes(s)));
  return later && !earlier ? { keepForRun: later.run } : {};
}

function reasons(
  groups: readonly StencilGroup[],
  times: number,
  pair: boolean,
  alone: Saying | undefined,
  lasts: number,
  material: Pick<Material, 'name' | 'washable'>,
): Saying {
  if (times === 1) return say(pair ? 'plan.oneCutForBoth' : 'plan.oneCut');
  const longest = Math.max(
    ...groups.map((g) =>
      material.washable ? g.layers.reduce((sum, l) => sum + l.sheetsThrough, 0) : Math.max(...g.layers.map((l) => l.sheetsThrough)),
    ),
  );
  const often = Math.max(...groups.map((g) => g.layers.length));
  return sentences(
    alone,
    longest > lasts && say('plan.wornBefore', { material: material.name, lasts, pulls: longest }),
    !material.washable && often > 1 && say('plan.notWashable', { material: material.name, runs: often }),
  );
}

const numbers = (from: number, count: number): number[] => Array.from({ length: count }, (_, i) => from + i + 1);

function samePaths(a: Region, b: Region): boolean {
  return (
    a.rings.length === b.rings.length &&
    a.rings.every((ring, i) => ring.length === b.rings[i].length && ring.every((v, k) => v === b.rings[i][k]))
  );
}
