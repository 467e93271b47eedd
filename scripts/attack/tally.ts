/** What came of one kind of attack. */
export class Tally {
  tried = 0;
  survived = 0;
  /** Of those that survived, how many were read in spite of it all. */
  read = 0;
  /** Work of the maker's that is gone, or something read as what it is not. */
  lost = 0;
  dead = 0;
  slow = 0;
  large = 0;
  slowestMs = 0;
  mostMegabytes = 0;
  readonly told: string[] = [];

  readonly kind: string;

  constructor(kind: string) {
    this.kind = kind;
  }

  tell(line: string): void {
    if (this.told.length < 20) this.told.push(line);
  }

  get holds(): boolean {
    return this.lost + this.dead + this.slow + this.large === 0;
  }

  line(): string {
    const cells = [
      this.kind.padEnd(22),
      ...[this.tried, this.survived, this.lost, this.dead, this.slow, this.large].map((n) => String(n).padStart(9)),
    ];
    const more =
      this.slowestMs > 0
        ? `   slowest ${(this.slowestMs / 1000).toFixed(1)} s, most ${this.mostMegabytes.toFixed(0)} MB, read ${this.read}`
        : '';
    return cells.join('') + more;
  }
}

export const head = `${''.padEnd(22)}${['tried', 'survived', 'lost', 'dead', '> 20 s', '> 1 GB'].map((w) => w.padStart(9)).join('')}`;
