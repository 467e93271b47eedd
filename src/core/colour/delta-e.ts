import { exp } from '../numeric/index.ts';
import type { Lab } from './bands.ts';

const pow25to7 = 25 ** 7;
const rad = Math.PI / 180;
const cos30 = Math.cos(30 * rad),
  sin30 = Math.sin(30 * rad),
  cos6 = Math.cos(6 * rad),
  sin6 = Math.sin(6 * rad),
  cos63 = Math.cos(63 * rad),
  sin63 = Math.sin(63 * rad);

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
  const p1 = a1 * g,
    p2 = a2 * g;
  const c1 = Math.sqrt(p1 * p1 + b1 * b1),
    c2 = Math.sqrt(p2 * p2 + b2 * b2);
  const grey = c1 * c2 === 0;
  // Hues as unit vectors: their half sum points to the mean hue, their difference is the chord between them; no angle is needed.
  const x1 = grey ? 1 : p1 / c1,
    y1 = grey ? 0 : b1 / c1,
    x2 = grey ? 1 : p2 / c2,
    y2 = grey ? 0 : b2 / c2;
  const dH = grey ? 0 : Math.sqrt(c1 * c2 * ((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1))) * (x1 * y2 - x2 * y1 < 0 ? -1 : 1);
  const dL = l2 - l1,
    dC = c2 - c1;
  const lMean = (l1 + l2) / 2,
    cAbove = (c1 + c2) / 2;
  let x = x1 + x2,
    y = y1 + y2;
  const length = Math.sqrt(x * x + y * y);
  if (grey || length < 1e-6) {
    const h = meanHue(b1, p1, b2, p2, grey);
    x = Math.cos(h);
    y = Math.sin(h);
  } else {
    x /= length;
    y /= length;
  }
  const x2h = 2 * x * x - 1,
    y2h = 2 * x * y,
    x3h = x2h * x - y2h * y,
    y3h = y2h * x + x2h * y,
    x4h = 2 * x2h * x2h - 1,
    y4h = 2 * x2h * y2h;
  const t = 1 - 0.17 * (x * cos30 + y * sin30) + 0.24 * x2h + 0.32 * (x3h * cos6 - y3h * sin6) - 0.2 * (x4h * cos63 + y4h * sin63);
  const c7Above = power7(cAbove);
  let rotation = 0;
  // The turn is about blue (275°): from 0° to 150° it is below 1e-10.
  if (y < 0 || x < -0.86) {
    const turn = (hue(y, x) / rad - 275) / 25;
    rotation = -2 * Math.sqrt(c7Above / (c7Above + pow25to7)) * Math.sin(60 * rad * exp(-turn * turn));
  }
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

/** The mean hue as the standard has it where the two are opposite, or one has none. */
function meanHue(b1: number, p1: number, b2: number, p2: number, grey: boolean): number {
  const h1 = p1 === 0 && b1 === 0 ? 0 : hue(b1, p1),
    h2 = p2 === 0 && b2 === 0 ? 0 : hue(b2, p2);
  const sum = h1 + h2;
  if (grey) return sum;
  if (Math.abs(h1 - h2) <= Math.PI) return sum / 2;
  return sum < 2 * Math.PI ? (sum + 2 * Math.PI) / 2 : (sum - 2 * Math.PI) / 2;
}

function hue(b: number, a: number): number {
  const h = Math.atan2(b, a);
  return h < 0 ? h + 2 * Math.PI : h;
}
