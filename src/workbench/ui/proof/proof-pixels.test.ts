import { describe, expect, test } from 'vitest';
import { packRgb, paint, type Codes } from '../../../core/print/index.ts';
import { dimPalette, paintSamples, pixelAt, sampleCodes } from './proof-pixels.ts';

const codes: Codes = { width: 4, height: 2, mmPerPx: 1, data: Uint8Array.of(0, 1, 2, 3, 4, 5, 6, 7) };
const palette = Uint32Array.from({ length: 256 }, (_, i) => packRgb((i * 10) & 255, 100, 200));

describe('the proof on the screen', () => {
  test('at its own size it is the proof that is printed in the packet, pixel by pixel', () => {
    const out = new Uint32Array(8),
      printed = new Uint32Array(8);
    paintSamples(sampleCodes(codes, 4, 2, 1), palette, out);
    paint(codes, palette, printed);
    expect(out).toEqual(printed);
  });

  test('smaller, an edge takes the colour between', () => {
    const out = new Uint32Array(2);
    paintSamples(sampleCodes(codes, 2, 1, 2), palette, out);
    expect(out[0] & 0xff).toBe((0 + 10 + 40 + 50) / 4);
    expect(out[1] >>> 8).toBe(palette[0] >>> 8);
  });

  test('with one overlap pointed at, only that one keeps its colour, whatever an open layer covers', () => {
    const open = 0b100;
    const dimmed = dimPalette(palette, 0xff & ~open, 0b001);
    expect(dimmed[0b001]).toBe(palette[0b001]);
    expect(dimmed[0b101]).toBe(palette[0b101]);
    const [r, g, b] = [dimmed[0b011] & 0xff, (dimmed[0b011] >>> 8) & 0xff, (dimmed[0b011] >>> 16) & 0xff];
    expect([g, b]).toEqual([r, r]);
  });

  test('a point of the picture finds its overlap, also on the very edge', () => {
    expect(codes.data[pixelAt(codes, 0, 0)]).toBe(0);
    expect(codes.data[pixelAt(codes, 1, 1)]).toBe(7);
    expect(codes.data[pixelAt(codes, 0.6, 0.2)]).toBe(2);
  });
});
