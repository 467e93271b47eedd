import type { Lab } from './bands.ts';

const pow25to7 = 25 ** 7;
const rad = Math.PI / 180;

/**
 * CIEDE2000 colour difference with kL = kC = kH = 1 (Sharma, Wu, Dalal 2005, Color Res. Appl. 30, 21). Symmetric.
 * Own kernel because orders and recipes call it by the million; held to the published pairs and to culori in test/outside.
 */
export function deltaE00(a: Lab, b: Lab): number {
  return deltaE00Of(a[0], a[1], a[2], b[0], b[1], b[2]);
}

/** The same on plain numbers, for loops over packed arrays. */
export function deltaE00Of(l1: number, a1: number, b1: number, l2: number, a2: number, b2: number): number {
  const cMean = (Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2;
  const c7 = power7(cMean);
  const g = 1 + 0.5 * (1 - Math.sqrt(c7 / (c7 + pow25to7)));
  const p1 = a1 * g, p2 = a2 * g;
  const c1 = Math.sqrt(p1 * p1 + b1 * b1), c2 = Math.sqrt(p2 * p2 + b2 * b2);
  const h1 = c1 === 0 ? 0 : hue(b1, p1), h2 = c2 === 0 ? 0 : hue(b2, p2);
  const grey = c1 * c2 === 0;
  let dh = 0;
  let hMean = h1 + h2;
  if (!grey) {
    dh = h2 - h1;
    if (dh > Math.PI) dh -= 2 * Math.PI;
    else if (dh < -Math.PI) dh += 2 * Math.PI;
    if (Math.abs(h1 - h2) <= Math.PI) hMean /= 2;
    else hMean = hMean < 2 * Math.PI ? (hMean + 2 * Math.PI) / 2 : (hMean - 2 * Math.PI) / 2;
  }
  const dL = l2 - l1, dC = c2 - c1, dH = 2 * Math.sqrt(c1 * c2) * Math.sin(dh / 2);
  const lMean = (l1 + l2) / 2, cAbove = (c1 + c2) / 2;
  const t = 1 - 0.17 * Math.cos(hMean - 30 * rad) + 0.24 * Math.cos(2 * hMean) + 0.32 * Math.cos(3 * hMean + 6 * rad) - 0.2 * Math.cos(4 * hMean - 63 * rad);
  const turn = (hMean / rad - 275) / 25;
  const theta = 30 * rad * Math.exp(-turn * turn);
  const c7Above = power7(cAbove);
  const rotation = -2 * Math.sqrt(c7Above / (c7Above + pow25to7)) * Math.sin(2 * theta);
  const l50 = (lMean - 50) * (lMean - 50);
  const sl = dL / (1 + (0.015 * l50) / Math.sqrt(20 + l50));
  const sc = dC / (1 + 0.045 * cAbove);
  const sh = dH / (1 + 0.015 * cAbove * t);
  return Math.sqrt(Math.max(0, sl * sl + sc * sc + sh * sh + rotation * sc * sh));
}

function power7(v: number): number {
  const v2 = v * v;
  return v2 * v2 * v2 * v;
}

function hue(b: number, a: number): number {
  const h = Math.atan2(b, a);
  return h < 0 ? h + 2 * Math.PI : h;
}
