/** A run's stencil, for what it lasts. */
export interface WearRun {
  /** Runs of one group take one sheet after another; a washable sheet carries on in the group's next run. */
  readonly group: string;
  readonly washable: boolean;
  /** Pulls that one sheet lasts, to be on the safe side. */
  readonly lasts: number;
  /** Set-up sheets at the start of the run, and the sheets after them. */
  readonly setUp: number;
  readonly sheets: number;
}

export interface StencilChange {
  /** The stencil is changed after this pull of the run, set-up and check sheets counted. */
  readonly afterPull: number;
  /** How many sheets of the edition have gone through by then. */
  readonly afterSheets: number;
  /** Which stencil of the run comes next: 2, 3, … */
  readonly stencil: number;
  /** Pulled after it, on offcuts or rejects, to check the register before the next good sheet. */
  readonly checkSheets: number;
}

export interface RunWear {
  readonly pulls: number;
  /** Stencils that are begun in this run. */
  readonly fresh: number;
  readonly changes: readonly StencilChange[];
}

/** Sheets on which the register is checked after a change: two (common practice), fewer where the stencil hardly lasts that long. */
export const checkSheetsFor = (lasts: number): number => Math.min(2, Math.max(0, Math.floor((lasts - 1) / 2)));

/** Run by run, in laydown order: where a stencil gives out and the next must be mounted, and the pulls that this makes in all. */
export function wearOf(runs: readonly WearRun[]): RunWear[] {
  const leftOf = new Map<string, number>();
  return runs.map(({ group, washable, lasts: life, setUp, sheets }): RunWear => {
    const lasts = Math.max(1, Math.floor(life));
    const check = checkSheetsFor(lasts);
    let left = (washable ? leftOf.get(group) : undefined) ?? lasts;
    const begun = washable && (leftOf.get(group) ?? 0) > 0;
    if (left === 0) left = lasts;
    let still = setUp + sheets;
    let pulls = 0;
    const changes: StencilChange[] = [];
    while (still > 0) {
      if (left === 0) {
        left = lasts;
        const checked = changes.reduce((sum, c) => sum + c.checkSheets, 0);
        changes.push({
          afterPull: pulls,
          afterSheets: Math.max(0, pulls - setUp - checked),
          stencil: changes.length + 2,
          checkSheets: check,
        });
        still += check;
      }
      const now = Math.min(left, still);
      [left, still, pulls] = [left - now, still - now, pulls + now];
    }
    leftOf.set(group, left);
    return { pulls, fresh: changes.length + (begun ? 0 : 1), changes };
  });
}
