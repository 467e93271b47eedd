import { say, type Saying } from '../../../words/say.ts';
import { deltaE00Of } from '../../colour/index.ts';
import type { SeparatedLayer, Separation } from '../types.ts';

/** The print is looked at in so many fields each way; the rim is so many of them broad, the middle twice that from each side. */
const fields = 16,
  rim = 2,
  middle = 4;
/** Laid on more of the image than this, a run is a ground. */
const groundFrom = 0.7;
/** So much of what is seen of a run lies on one side, or so many times as thick in the middle as at the rim: that is where it is. */
const mostlyFrom = 0.8,
  timesThicker = 4;
/** L* by which a run lightens what it is laid on, to be called that. */
const lifts = 2;
/** A run is known by the lightest quarter of what it changes: from there it reaches down into the dark. */
const lightestShare = 0.25;

/** Lightness as a share of the print's own, from which a tone is called so; the last is whatever is left. */
const tones = [
  [0.8, say('separate.paleTones')],
  [0.6, say('separate.lightTones')],
  [0.4, say('separate.middleTones')],
  [0.2, say('separate.darkTones')],
  [0, say('separate.shadows')],
] as const;
const grounds = [
  [0.6, say('separate.lightGround')],
  [0.35, say('separate.middleGround')],
  [0, say('separate.darkGround')],
] as const;
const backgrounds = [
  [0.6, say('separate.lightBackground')],
  [0.35, say('separate.middleBackground')],
  [0, say('separate.darkBackground')],
] as const;

/** What is measured of a run. */
interface Seen {
  /** Lightness of its lightest quarter, 0..1 between the print's own darks and lights. */
  readonly tone: number;
  /** L* by which it lightens what it lies on; below nought it darkens. */
  readonly lift: number;
  /** Share of the image that it is laid on. */
  readonly share: number;
  /** How much of it is seen in each field. */
  readonly at: Float64Array;
}

export type NamedPrint = Pick<Separation, 'codes' | 'overlapLab' | 'width' | 'height'>;

/** The runs that print anything; the others make no job. */
export const printing = (layers: readonly SeparatedLayer[]): readonly SeparatedLayer[] =>
  layers.filter((layer) => layer.region.rings.length > 0);

/** What each run that prints is called: by what it changes in the print, and where. Measured, so the same for the same print; two may be alike. */
export function runNames(separation: NamedPrint & Pick<Separation, 'layers'>): Saying[] {
  const counts = countsOf(separation);
  return printing(separation.layers).map(({ bit, key }) => (key ? say('separate.keyRun') : nameOf(seen(separation, counts, bit))));
}

function nameOf(run: Seen): Saying {
  if (run.share >= groundFrom) return inBand(grounds, run.tone);
  const place = placeOf(run.at);
  if (place === 'rim') return inBand(backgrounds, run.tone);
  const tone = run.lift > lifts && run.tone >= tones[1][0] ? say('separate.highlights') : inBand(tones, run.tone);
  return place ? say('separate.toneAt', { tone, place }) : tone;
}

function inBand(bands: readonly (readonly [number, Saying])[], tone: number): Saying {
  return (bands.find(([from]) => tone >= from) ?? bands[bands.length - 1])[1];
}

/** How often each code is printed in each field. */
function countsOf({ codes, overlapLab, width, height }: NamedPrint): Uint32Array {
  const codeCount = overlapLab.length / 3,
    counts = new Uint32Array(fields * fields * codeCount);
  for (let y = 0, i = 0; y < height; y++) {
    const row = Math.floor((y * fields) / height) * fields;
    for (let x = 0; x < width; x++) counts[(row + Math.floor((x * fields) / width)) * codeCount + codes[i++]]++;
  }
  return counts;
}

function seen({ overlapLab: lab, codes }: NamedPrint, counts: Uint32Array, bit: number): Seen {
  const codeCount = lab.length / 3,
    all = new Float64Array(codeCount),
    weight = new Float64Array(codeCount),
    at = new Float64Array(fields * fields);
  counts.forEach((n, i) => {
    all[i % codeCount] += n;
  });
  let laid = 0,
    sum = 0,
    lift = 0;
  for (let code = 0; code < codeCount; code++) {
    const without = code & ~(1 << bit);
    if (without === code || all[code] === 0) continue;
    const a = 3 * code,
      b = 3 * without;
    // Under an ink that covers it nothing of it is seen; a run that is seen nowhere is judged by where it lies.
    weight[code] = Math.max(1e-3, deltaE00Of(lab[a], lab[a + 1], lab[a + 2], lab[b], lab[b + 1], lab[b + 2]));
    laid += all[code];
    sum += all[code] * weight[code];
    lift += all[code] * weight[code] * (lab[a] - lab[b]);
  }
  counts.forEach((n, i) => {
    at[Math.floor(i / codeCount)] += n * weight[i % codeCount];
  });
  const [dark, light] = [0.98, 0.02].map((share) => lightnessFrom(lab, all, share));
  const own = lightnessFrom(
    lab,
    all.map((n, code) => n * weight[code]),
    lightestShare,
  );
  return {
    tone: light - dark < 1 ? 0.5 : Math.max(0, Math.min(1, (own - dark) / (light - dark))),
    lift: sum > 0 ? lift / sum : 0,
    share: laid / codes.length,
    at,
  };
}

/** The lightness that so large a share of what is counted is lighter than. */
function lightnessFrom(lab: Float64Array, count: Float64Array, share: number): number {
  const lightFirst = [...count.keys()].filter((code) => count[code] > 0).sort((a, b) => lab[3 * b] - lab[3 * a] || a - b);
  const wanted = share * count.reduce((a, b) => a + b, 0);
  let sum = 0;
  for (const code of lightFirst) {
    sum += count[code];
    if (sum >= wanted) return lab[3 * code];
  }
  return 0;
}

/** Where most of it is: on one side, in the middle, around it; nothing where it is everywhere. */
function placeOf(at: Float64Array): Saying | 'rim' | undefined {
  const over = (isIn: (x: number, y: number) => boolean): readonly [sum: number, count: number] => {
    let sum = 0,
      count = 0;
    for (let i = 0; i < at.length; i++)
      if (isIn(i % fields, Math.floor(i / fields))) {
        sum += at[i];
        count++;
      }
    return [sum, count];
  };
  const all = over(() => true)[0];
  if (all <= 0) return undefined;
  const half = fields / 2,
    sides = [
      [over((_, y) => y < half)[0] / all, say('separate.top')],
      [over((_, y) => y >= half)[0] / all, say('separate.bottom')],
      [over((x) => x < half)[0] / all, say('separate.left')],
      [over((x) => x >= half)[0] / all, say('separate.right')],
    ] as const;
  const [most, side] = sides.reduce((best, one) => (one[0] > best[0] ? one : best));
  if (most >= mostlyFrom) return side;
  const within = (n: number, from: number): boolean => n >= from && n < fields - from;
  const thickness = ([sum, count]: readonly [number, number]): number => sum / count;
  const outside = thickness(over((x, y) => !(within(x, rim) && within(y, rim)))),
    inside = thickness(over((x, y) => within(x, middle) && within(y, middle)));
  if (inside >= timesThicker * outside) return say('separate.centre');
  return outside >= timesThicker * inside ? 'rim' : undefined;
}
