import { apart, contrastOf, labOf, readColour, type Rgb } from './colours.ts';
import { gradientPlace, type GradientPlace } from './gradient.ts';
import type { Matrix } from '../path.ts';
import { refersTo, type Tag } from '../tree.ts';

/** Paint at one place: its own colour and how much of what lies below it hides. */
export interface Dab {
  readonly rgb: Rgb;
  readonly alpha: number;
}

export interface Paint {
  /** One dab for plain paint; for a gradient the dab at each of its stops, by offset. */
  readonly stops: readonly (Dab & { readonly at: number })[];
  readonly gradient?: GradientPlace;
}

/** The paint of a `fill` or `stroke`; undefined where there is none to be seen. `box`: matrix that maps the unit square onto the shape's box. */
export function readPaint(
  value: string | undefined,
  opacity: number,
  matrix: Matrix,
  box: () => Matrix,
  byId: ReadonlyMap<string, Tag>,
): Paint | undefined {
  if (value === undefined || value === 'none' || !(opacity > leastAlpha)) return undefined;
  const plain = readColour(value);
  if (plain) return { stops: [{ at: 0, rgb: plain, alpha: opacity }] };
  const tag = refersTo(value, byId);
  if (tag?.name === 'pattern') return { stops: [{ at: 0, rgb: firstColour(tag) ?? black, alpha: opacity }] };
  const stops = (tag?.children ?? [])
    .filter((child) => child.name === 'stop')
    .map(({ attributes }) => ({
      at: share(attributes['offset'], 0),
      rgb: readColour(attributes['stop-color'] ?? '') ?? black,
      alpha: opacity * share(attributes['stop-opacity'], 1),
    }));
  if (!tag || stops.length === 0) return { stops: [{ at: 0, rgb: black, alpha: opacity }] };
  if (stops.every((stop) => stop.alpha <= leastAlpha)) return undefined;
  if (stops.length === 1) return { stops };
  const place = gradientPlace(tag, tag.attributes['gradientUnits'] === 'userSpaceOnUse' ? matrix : box());
  return place ? { stops, gradient: place } : { stops: stops.slice(-1) };
}

/** Fainter than this is not there. */
export const leastAlpha = 0.02;
const black: Rgb = [0, 0, 0];

/** Paint at an offset of its gradient. */
export function dabAt({ stops }: Paint, at: number): Dab {
  if (stops.length === 1 || at <= stops[0].at) return stops[0];
  for (let i = 1; i < stops.length; i++) {
    const one = stops[i - 1],
      two = stops[i];
    if (at > two.at) continue;
    const t = two.at > one.at ? (at - one.at) / (two.at - one.at) : 1;
    const between = (k: 0 | 1 | 2): number => one.rgb[k] + (two.rgb[k] - one.rgb[k]) * t;
    return { rgb: [between(0), between(1), between(2)], alpha: one.alpha + (two.alpha - one.alpha) * t };
  }
  return stops[stops.length - 1];
}

/** The colour that is seen where the paint lies on white. */
export const onWhite = ({ rgb, alpha }: Dab): Rgb => rgb.map((v) => v * alpha + 255 * (1 - alpha)) as unknown as Rgb;

function firstColour(tag: Tag): Rgb | undefined {
  for (const child of tag.children) {
    const found = readColour(child.attributes['fill'] ?? '') ?? readColour(child.attributes['stroke'] ?? '') ?? firstColour(child);
    if (found) return found;
  }
  return undefined;
}

/** A share of 0..1 as an attribute has it. */
export const share = (value: string | undefined, usual: number): number =>
  value === undefined ? usual : Math.max(0, Math.min(1, Number(value) || 0));

export interface Strength {
  /** Where the paint is strongest, if it only fades from there to white or to nothing; undefined where it turns to another colour. */
  readonly full?: Dab;
  /** Of its own full contrast to white, 0..1. */
  readonly strengthAt: (at: number) => number;
}

/** So far (CIE 1976) may a stop lie from the way between the strongest colour and white. */
const asideOfFade = 18,
  /** Weaker than this somewhere, it fades. */
  weak = 0.3;

export function strengthOf(paint: Paint): Strength {
  const contrast = (dab: Dab): number => contrastOf(onWhite(dab));
  const strongest = paint.stops.reduce((a, b) => (contrast(b) > contrast(a) ? b : a));
  const most = Math.max(contrast(strongest), 1e-6);
  const strengthAt = (at: number): number => Math.min(1, contrast(dabAt(paint, at)) / most);
  const weakest = Math.min(...paint.stops.map((stop) => contrast(stop) / most));
  if (!paint.gradient || weakest > weak) return { strengthAt };
  const way = Array.from({ length: 21 }, (_, i) => labOf(onWhite({ rgb: onWhite(strongest), alpha: i / 20 })));
  const fades = paint.stops.every((stop) => Math.min(...way.map((lab) => apart(lab, labOf(onWhite(stop))))) < asideOfFade);
  return { ...(fades ? { full: strongest } : {}), strengthAt };
}
