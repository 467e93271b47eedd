export interface SheetTime {
  readonly sheet: string;
  readonly run: string;
  /** Minutes from midnight before day 1. On the rack from `off` to `dry`. */
  readonly on: number;
  readonly off: number;
  readonly dry: number;
}

/** Places for wet sheets, and when each sheet is dry. */
export class Rack {
  readonly places: number;
  readonly times: SheetTime[] = [];
  /** The most sheets that lay on it at once. */
  peak = 0;
  /** Drying times of the sheets on it, soonest first. */
  private wet: number[] = [];
  private readonly dryAt = new Map<string, number>();

  constructor(places: number) {
    this.places = places;
  }

  dryOf(sheet: string): number {
    return this.dryAt.get(sheet) ?? 0;
  }

  get lastDry(): number {
    return Math.max(0, ...this.dryAt.values());
  }

  /** When a place comes free for a sheet that comes off so long after; 0: there is one. */
  placeFor(...minutesBefore: readonly number[]): number {
    const { wet, places } = this;
    return wet.length < places ? 0 : minutesBefore.reduce((at, minutes) => at - minutes, wet[wet.length - places]);
  }

  lay(time: SheetTime): void {
    const wet = this.wet.filter((end) => end > time.off);
    let at = wet.length;
    while (at > 0 && wet[at - 1] > time.dry) at--;
    wet.splice(at, 0, time.dry);
    this.wet = wet;
    this.peak = Math.max(this.peak, wet.length);
    this.dryAt.set(time.sheet, time.dry);
    this.times.push(time);
  }
}
