import { deltaE00 } from '../colour/index.ts';
import type { Job, JobLayer } from '../job/index.ts';
import type { PlannedOverlap } from '../plan/index.ts';

/** What differs between two jobs, told as facts; the words come from the catalogue. */
export type Difference =
  | { readonly kind: 'only-left' | 'only-right'; readonly run: string }
  | { readonly kind: 'place'; readonly run: string; readonly from: number; readonly to: number }
  | { readonly kind: 'ink'; readonly run: string; readonly from: string | null; readonly to: string | null }
  | { readonly kind: 'strength'; readonly run: string; readonly from: number; readonly to: number }
  | { readonly kind: 'side'; readonly run: string; readonly from: JobLayer['side']; readonly to: JobLayer['side'] }
  | { readonly kind: 'out' | 'in' | 'cut' | 'stencil'; readonly run: string }
  | { readonly kind: 'ink-figures'; readonly ink: string }
  | { readonly kind: 'paper'; readonly paper: string }
  | { readonly kind: 'image' | 'press' | 'edition' };

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** From the left job to the right one. Runs are told apart by id, so a run that was renamed is still the same run. */
export function differencesOf(left: Job, right: Job): readonly Difference[] {
  const found: Difference[] = [];
  const other = new Map(right.layers.map((layer) => [layer.id, layer]));
  const here = new Set(left.layers.map((layer) => layer.id));
  const inkName = (job: Job, id: string | null): string | null =>
    id === null ? null : (job.inks.find((ink) => ink.id === id)?.name ?? id);
  for (const layer of left.layers) if (!other.has(layer.id)) found.push({ kind: 'only-left', run: layer.name });
  for (const layer of right.layers) if (!here.has(layer.id)) found.push({ kind: 'only-right', run: layer.name });

  const common = left.layers.filter((layer) => other.has(layer.id));
  for (const id of movedRuns(
    common.map((l) => l.id),
    right.layers.map((l) => l.id).filter((i) => here.has(i)),
  )) {
    const place = (job: Job): number => job.layers.findIndex((l) => l.id === id) + 1;
    found.push({ kind: 'place', run: other.get(id)!.name, from: place(left), to: place(right) });
  }
  for (const a of common) {
    const b = other.get(a.id)!;
    const run = b.name;
    if (a.off !== b.off) found.push({ kind: b.off ? 'out' : 'in', run });
    const [from, to] = [inkName(left, a.ink), inkName(right, b.ink)];
    if (a.ink !== b.ink) found.push({ kind: 'ink', run, from, to });
    if (a.strength !== b.strength) found.push({ kind: 'strength', run, from: a.strength, to: b.strength });
    if (a.side !== b.side) found.push({ kind: 'side', run, from: a.side, to: b.side });
    if (!same(cutOf(left, a), cutOf(right, b))) found.push({ kind: 'cut', run });
    if (!same(heldBy(a), heldBy(b))) found.push({ kind: 'stencil', run });
  }
  for (const ink of right.inks) {
    const before = left.inks.find((i) => i.id === ink.id);
    if (before && !same(before, ink)) found.push({ kind: 'ink-figures', ink: ink.name });
  }
  const papers = new Map([...left.papers, ...right.papers].map((p) => [p.id, p.name]));
  for (const [id, paper] of papers)
    if (
      !same(
        left.papers.find((p) => p.id === id),
        right.papers.find((p) => p.id === id),
      )
    )
      found.push({ kind: 'paper', paper });
  if (!same(left.image, right.image)) found.push({ kind: 'image' });
  if (!same([left.screen, left.register, left.day], [right.screen, right.register, right.day])) found.push({ kind: 'press' });
  if (!same(left.edition, right.edition)) found.push({ kind: 'edition' });
  return found;
}

/** What is cut for a run: its forms too, since a form that was redrawn prints otherwise. */
function cutOf(job: Job, layer: JobLayer): unknown {
  const cut = job.cuts.find((c) => c.id === layer.cut);
  return cut && [cut.parts, cut.parts.map((part) => job.forms.find((f) => f.id === part.form)), layer.spreadMm];
}
function heldBy(layer: JobLayer): unknown {
  return [layer.islands, layer.bridgesBy, layer.pinnedBridges, layer.noBridge, layer.closings, layer.drops];
}

/** The fewest runs whose moving makes one order the other: all but a longest part that kept its order. */
export function movedRuns(before: readonly string[], after: readonly string[]): readonly string[] {
  const at = before.map((id) => after.indexOf(id));
  const best = at.map(() => 1),
    from = at.map(() => -1);
  let end = -1;
  for (let i = 0; i < at.length; i++) {
    for (let j = 0; j < i; j++)
      if (at[j] < at[i] && best[j] + 1 > best[i]) {
        best[i] = best[j] + 1;
        from[i] = j;
      }
    if (end < 0 || best[i] > best[end]) end = i;
  }
  const kept = new Set<number>();
  for (let i = end; i >= 0; i = from[i]) kept.add(i);
  return before.filter((_, i) => !kept.has(i));
}

export interface ChangedOverlap {
  readonly left: PlannedOverlap | null;
  readonly right: PlannedOverlap | null;
  /** ΔE00 between the two; null where only one print has it. */
  readonly deltaE: number | null;
  /** The difference is smaller than what the forecasts themselves may be off by. */
  readonly within: boolean;
}

/** Below this nobody sees a difference, and it isn't listed; ΔE00. */
const leastSeen = 0.3;

/** Overlaps that differ, those first that are seen most: difference times area. Told apart by their set of runs. */
export function changedOverlaps(left: readonly PlannedOverlap[], right: readonly PlannedOverlap[]): readonly ChangedOverlap[] {
  const key = (o: PlannedOverlap): string => [...o.layers].sort().join(' ');
  const there = new Map(right.map((o) => [key(o), o]));
  const here = new Set(left.map(key));
  const pairs: ChangedOverlap[] = left.map((a) => {
    const b = there.get(key(a)) ?? null;
    const deltaE = b && deltaE00(a.lab, b.lab);
    return { left: a, right: b, deltaE, within: b !== null && deltaE !== null && deltaE < Math.hypot(a.band, b.band) };
  });
  for (const b of right) if (!here.has(key(b))) pairs.push({ left: null, right: b, deltaE: null, within: false });
  const weight = ({ left: a, right: b, deltaE }: ChangedOverlap): number => (deltaE ?? 20) * Math.max(a?.areaMm2 ?? 0, b?.areaMm2 ?? 0);
  return pairs.filter((p) => p.deltaE === null || p.deltaE >= leastSeen).sort((p, q) => weight(q) - weight(p));
}
