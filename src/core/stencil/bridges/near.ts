import { nearDistance } from '../raster/edt.ts';

/** Distances to what lies outside a shape, around the places that ask for them. */
export class Near {
  private readonly mask: Uint8Array;
  private readonly width: number;
  private readonly height: number;
  private readonly value: 0 | 1;
  private readonly cap: number;
  private distance: Uint16Array | undefined;
  private whole = false;

  constructor(mask: Uint8Array, width: number, height: number, value: 0 | 1, cap: number) {
    this.mask = mask;
    this.width = width;
    this.height = height;
    this.value = value;
    this.cap = cap;
  }

  /** Right for these pixels and their neighbours. */
  around(pixels: readonly number[]): Uint16Array {
    const { mask, width, height, value, cap } = this;
    if (this.distance && this.whole) return this.distance;
    let x0 = width,
      y0 = height,
      x1 = 0,
      y1 = 0;
    for (const p of pixels) {
      const x = p % width,
        y = (p - x) / width;
      if (x < x0) x0 = x;
      if (x > x1) x1 = x;
      if (y < y0) y0 = y;
      if (y > y1) y1 = y;
    }
    const reach = cap + 1;
    x0 = Math.max(0, x0 - reach);
    y0 = Math.max(0, y0 - reach);
    x1 = Math.min(width - 1, x1 + reach);
    y1 = Math.min(height - 1, y1 + reach);
    const w = x1 - x0 + 1,
      h = y1 - y0 + 1;
    if (4 * w * h > width * height) {
      this.whole = true;
      return (this.distance = nearDistance(mask, width, height, value, cap));
    }
    const own = new Uint8Array(w * h);
    for (let y = 0; y < h; y++) own.set(mask.subarray((y0 + y) * width + x0, (y0 + y) * width + x0 + w), y * w);
    const found = nearDistance(own, w, h, value, cap);
    this.distance ??= new Uint16Array(width * height);
    // Near the box's edge what lies beyond it is missing.
    const top = y0 === 0 ? 0 : cap,
      left = x0 === 0 ? 0 : cap,
      bottom = y1 === height - 1 ? h : h - cap,
      right = x1 === width - 1 ? w : w - cap;
    for (let y = top; y < bottom; y++) this.distance.set(found.subarray(y * w + left, y * w + right), (y0 + y) * width + x0 + left);
    return this.distance;
  }
}
