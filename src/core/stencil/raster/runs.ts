/** Runs of a raster's pixels, row by row; a run lies in one row. */
export interface RunSource {
  /** The run found last: pixels from..end−1. */
  readonly from: number;
  readonly end: number;
  /** Goes on to the next run; false when there is none. */
  next(): boolean;
}

/**
 * Finds the runs of one value in the rows of a 0/1 raster, from the top left on. Each pixel is looked at once however
 * long a stretch of one value is: what a search saw beyond the end of a row is remembered for the next.
 */
export class Runs implements RunSource {
  from = 0;
  end = 0;
  private readonly mask: Uint8Array;
  private readonly width: number;
  private readonly value: number;
  /** First pixel after `end` that is not `value`. */
  private stop = 0;

  constructor(mask: Uint8Array, width: number, value: 0 | 1) {
    this.mask = mask;
    this.width = width;
    this.value = value;
  }

  next(): boolean {
    const { mask, width, value } = this;
    if (this.end < this.stop) this.from = this.end;
    else {
      const from = mask.indexOf(value, this.end);
      if (from < 0) return false;
      const stop = mask.indexOf(1 - value, from);
      this.from = from;
      this.stop = stop < 0 ? mask.length : stop;
    }
    const rowEnd = this.from - (this.from % width) + width;
    this.end = Math.min(this.stop, rowEnd);
    return true;
  }
}
