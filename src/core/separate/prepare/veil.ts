import { around } from '../kernels/register-room.ts';
import { findFaces, scaledLab, type Picture } from '../../image/index.ts';
import { whitePoints } from '../../colour/index.ts';
import { blurPlane, gaussTaps } from '../kernels/blur.ts';
import type { ImportanceMap } from '../types.ts';
import { facesMatter } from './faces-matter.ts';
import { residualSaliency } from './residual.ts';

/** Enough to tell an eye from a cheek in a portrait. */
const longSide = 256;
/** What counts least and most before the whole is brought back to a mean of 1. */
const least = 0.35,
  most = 3.5;
/** How much each measure has to say. */
const shares = { lines: 0.5, focus: 0.15, stands: 0.35 };

const lastVeils = new WeakMap<Picture, ImportanceMap>();

/** The veil if somebody has asked for it already: whoever has no time to wait takes it or does without. */
export function veilAtHand(picture: Picture): ImportanceMap | undefined {
  return lastVeils.get(picture);
}

/**
 * What matters in a picture by itself: lines that are there at two scales (texture is not there at the wider one), what is in focus,
 * and what stands out (Hou and Zhang 2007); eyes and mouth of faces before all else. Over the whole picture, 1 on average.
 */
export function veilOf(picture: Picture): ImportanceMap {
  const known = lastVeils.get(picture);
  if (known) return known;
  const scale = longSide / Math.max(picture.width, picture.height),
    width = Math.max(2, Math.round(picture.width * scale)),
    height = Math.max(2, Math.round(picture.height * scale));
  const lab = scaledLab(picture, { x: 0, y: 0, width: 1, height: 1 }, width, height, whitePoints.D50);
  const weight = veilOn(lab, width, height),
    faces = findFaces(picture);
  if (faces.length > 0) {
    facesMatter(faces, weight, width, height);
    toMeanOne(weight);
  }
  const made = { width, height, weight };
  lastVeils.set(picture, made);
  return made;
}

/** @param lab 3 a pixel */
export function veilOn(lab: Float32Array, width: number, height: number): Float32Array {
  const planes = [0, 1, 2].map((c) => Float32Array.from({ length: width * height }, (_, i) => lab[3 * i + c]));
  const blurred = (plane: Float32Array, sigma: number): Float32Array => {
    const out = new Float32Array(plane.length);
    blurPlane(plane, width, height, gaussTaps(sigma), out);
    return out;
  };
  const fine = slopes(
    planes.map((p) => blurred(p, 0.8)),
    width,
    height,
  );
  const wide = slopes(
    planes.map((p) => blurred(p, 2.4)),
    width,
    height,
  );
  // An edge loses little of its slope at the wider scale when it stands alone; hair and leaves lose nearly all of it.
  const lines = fine.map((v, i) => Math.min(v, 2.5 * wide[i]));
  const sharp = fine.map((v, i) => Math.max(0, v - 1.3 * wide[i]));
  const measures: readonly (readonly [Float32Array, number])[] = [
    [upToOne(blurred(lines, 1.5)), shares.lines],
    [upToOne(blurred(sharp, 8)), shares.focus],
    [upToOne(residualSaliency(planes, width, height)), shares.stands],
  ];
  // Eyes and mouth lie in skin: a narrow gap in it is of the face.
  const skin = upToOne(blurred(blurred(skinOf(planes), 3), 3));
  const marks = marksOf(blurred(planes[0], 0.6), width, height, blurred);
  const weight = new Float32Array(width * height);
  for (let i = 0; i < weight.length; i++) {
    let v = 0;
    for (const [values, share] of measures) v += share * values[i];
    v = Math.min(1.4, v * (1 + skin[i])) + marksCount * marks[i] * (0.4 + 0.6 * skin[i]);
    v = Math.min(mostOfAll, v);
    weight[i] = least + (most - least) * v * v;
  }
  toMeanOne(weight);
  return weight;
}

function toMeanOne(weight: Float32Array): void {
  let sum = 0;
  for (const v of weight) sum += v;
  const mean = sum / weight.length;
  for (let i = 0; i < weight.length; i++) weight[i] /= mean;
}

/** How much a small dark mark adds, and all together at most. */
const marksCount = 1.1,
  mostOfAll = 1.7;
/** A mark fits between so many pixels, is darker than what lies around it by more than the least and up to so much more (L*), and that is even: it rises by no more than this a pixel. */
const markReach = 3,
  leastDepth = 7,
  markDepth = 15,
  evenSlope = 2.2;

/**
 * Small dark marks on an even lighter ground, 0..1: an eye, a mouth, a bird in the sky. What closing a picture fills is what is smaller and darker than
 * its surroundings (black top-hat: J. Serra, Image Analysis and Mathematical Morphology, 1982).
 */
function marksOf(
  lightness: Float32Array,
  width: number,
  height: number,
  blurred: (plane: Float32Array, sigma: number) => Float32Array,
): Float32Array {
  const filled = around(around(lightness, width, height, markReach, true), width, height, markReach, false),
    ground = slopes([blurred(filled, 1.5)], width, height);
  const marks = lightness.map(
    (l, i) =>
      Math.min(1, Math.max(0, filled[i] - l - leastDepth) / markDepth) *
      Math.max(0, 1 - ground[i] / evenSlope) *
      (filled[i] > skinLight[0] ? 1 : 0),
  );
  // Hair and leaves have marks all over: those that stand alone count.
  const crowd = blurred(marks, 9);
  return blurred(
    marks.map((v, i) => v * Math.max(0, 1 - crowd[i] / 0.2)),
    0.8,
  ).map((v) => Math.min(1, 1.6 * v));
}

/** Skins light and dark differ in lightness and are nearly of one hue; broad enough for the light of a photograph. common practice */
const skinHue = [30, 80],
  skinChroma = [8, 36],
  skinLight = [22, 85];

function skinOf([l, a, b]: readonly Float32Array[]): Float32Array {
  const inside = (v: number, [low, high]: readonly number[]): boolean => v >= low && v <= high;
  return l.map((light, i) =>
    inside(light, skinLight) && inside(Math.hypot(a[i], b[i]), skinChroma) && inside((Math.atan2(b[i], a[i]) * 180) / Math.PI, skinHue)
      ? 1
      : 0,
  );
}

/** How steeply colour changes, in Lab a pixel. */
function slopes(planes: readonly Float32Array[], width: number, height: number): Float32Array {
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x,
        left = x > 0 ? i - 1 : i,
        right = x + 1 < width ? i + 1 : i,
        up = y > 0 ? i - width : i,
        down = y + 1 < height ? i + width : i;
      let sum = 0;
      for (const p of planes) sum += (p[right] - p[left]) ** 2 + (p[down] - p[up]) ** 2;
      out[i] = Math.sqrt(sum) / 2;
    }
  return out;
}

/** 1 at the strongest twentieth. */
function upToOne(values: Float32Array): Float32Array {
  const high = values.slice().sort()[Math.floor(values.length * 0.95)];
  return high > 1e-6 ? values.map((v) => Math.min(1, v / high)) : values.fill(0);
}
