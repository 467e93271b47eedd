/** One line of `npm run bench`: our median beside its rival or limit in the same run. */
export interface BenchRow {
  readonly name: string;
  readonly medianMs: number;
  readonly rivalName?: string;
  readonly rivalMs?: number;
  readonly note?: string;
}

/** Median time of `work` in ms: once to warm up, then at least `least` times or until `budgetMs` is spent. */
export async function medianMs(work: () => unknown, { least = 5, most = 60, budgetMs = 1500 } = {}): Promise<number> {
  await work();
  const times: number[] = [];
  const start = performance.now();
  while (times.length < most && (times.length < least || performance.now() - start < budgetMs)) {
    const before = performance.now();
    await work();
    times.push(performance.now() - before);
  }
  times.sort((a, b) => a - b);
  return times[times.length >> 1];
}
