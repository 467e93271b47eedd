const none = -1;

/**
 * Waiting list of a shortest-path search with whole-number costs (Dial 1969): costs within `span` of the present one.
 * Items of one cost are taken in the order in which they were put.
 */
export class Buckets {
  private readonly mask: number;
  private readonly head: Int32Array;
  private readonly tail: Int32Array;
  /** Entries, each with the one after it in its list; never used twice, so the room grows with what was put. */
  private item = new Int32Array(1 << 16);
  private after = new Int32Array(1 << 16);
  private used = 0;
  private waiting = 0;
  /** Cost of what `take` gave last. */
  cost = 0;

  constructor(span: number) {
    let size = 1;
    while (size <= span) size *= 2;
    this.head = new Int32Array(size).fill(none);
    this.tail = new Int32Array(size);
    this.mask = size - 1;
  }

  put(item: number, cost: number): void {
    const entry = this.used++;
    if (entry === this.item.length) this.grow();
    const slot = cost & this.mask;
    this.item[entry] = item;
    this.after[entry] = none;
    if (this.head[slot] === none) this.head[slot] = entry;
    else this.after[this.tail[slot]] = entry;
    this.tail[slot] = entry;
    this.waiting++;
  }

  /** The cheapest item, −1 when none waits. Items put twice come twice. */
  take(): number {
    if (this.waiting === 0) return -1;
    let slot = this.cost & this.mask;
    while (this.head[slot] === none) {
      this.cost++;
      slot = this.cost & this.mask;
    }
    const entry = this.head[slot];
    this.head[slot] = this.after[entry];
    this.waiting--;
    return this.item[entry];
  }

  private grow(): void {
    const item = new Int32Array(2 * this.item.length),
      after = new Int32Array(2 * this.item.length);
    item.set(this.item);
    after.set(this.after);
    this.item = item;
    this.after = after;
  }
}
