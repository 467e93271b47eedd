/** Waiting list of a shortest-path search with whole-number costs (Dial 1969): costs within `span` of the present one. */
export class Buckets {
  private readonly lists: number[][];
  private readonly mask: number;
  private heads: Int32Array;
  private waiting = 0;
  /** Cost of what `take` gave last. */
  cost = 0;

  constructor(span: number) {
    let size = 1;
    while (size <= span) size *= 2;
    this.lists = Array.from({ length: size }, () => []);
    this.heads = new Int32Array(size);
    this.mask = size - 1;
  }

  put(item: number, cost: number): void {
    this.lists[cost & this.mask].push(item);
    this.waiting++;
  }

  /** The cheapest item, −1 when none waits. Items put twice come twice. */
  take(): number {
    if (this.waiting === 0) return -1;
    for (;;) {
      const slot = this.cost & this.mask;
      const list = this.lists[slot];
      if (this.heads[slot] < list.length) {
        this.waiting--;
        return list[this.heads[slot]++];
      }
      list.length = 0;
      this.heads[slot] = 0;
      this.cost++;
    }
  }
}
