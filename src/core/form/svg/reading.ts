import { common, takeAway, uniteMany } from '../polygons.ts';
import { emptyRegion, regionBox, type Box, type Region } from '../region.ts';
import { isWhite, labOf, nearestColour, readColour } from './paint/colours.ts';
import { bandsWhere } from './paint/gradient.ts';
import { dabAt, onWhite, strengthOf, type Dab, type Paint } from './paint/paint.ts';
import type { Group, Mask, Scene } from './paint/scene.ts';

/** What of a drawing is the form. */
export interface DrawingReading {
  /** Everything drawn; what is dark; or what shows one of `colours`. */
  readonly what: 'silhouette' | 'dark' | 'colours';
  /** `#rrggbb`, of those that the drawing shows. */
  readonly colours?: readonly string[];
  /** Does white that lies on something take it away, as bare paper, or is it a shape like any other? */
  readonly white?: 'paper' | 'shape';
  /** How strongly a thing must be seen to be cut, 0..1: dark enough, or as much of its full strength where it fades. */
  readonly threshold?: number;
}

export const usualThreshold = 0.5;

/** What a dab of paint does to the form: adds to it, takes away from it, or neither. */
export type Effect = 'in' | 'out' | 'leave';
/**
 * `strength`: of the full contrast of its own shape, 0..1; less than 1 along a gradient. `full`: the dab where a fading gradient
 * is strongest; it is the colour that is meant.
 */
export type Rule = (dab: Dab, strength: number, full?: Dab) => Effect;

/** Paint that hides less than half of what lies below leaves that as it is. */
const elsewhere = (dab: Dab): Effect => (dab.alpha >= 0.5 ? 'out' : 'leave');

/** `palette`: the colours that the drawing shows, to which every paint belongs. */
export function ruleOf(reading: DrawingReading, palette: readonly string[]): Rule {
  const threshold = reading.threshold ?? usualThreshold;
  const whiteIsShape = reading.white === 'shape';
  if (reading.what === 'dark') return (dab) => (1 - labOf(onWhite(dab))[0] / 100 >= threshold ? 'in' : elsewhere(dab));
  if (reading.what === 'colours') {
    const wanted = new Set((reading.colours ?? []).map((c) => c.toLowerCase()));
    const chosen = new Set(palette.filter((colour) => wanted.has(colour)));
    // Colours written by hand mean the nearest that is there.
    for (const colour of wanted) {
      const rgb = readColour(colour);
      if (rgb && !chosen.has(colour)) chosen.add(nearestColour(rgb, palette));
    }
    return (dab, strength, full) => {
      if (full && strength < threshold) return elsewhere(dab);
      return chosen.has(nearestColour(onWhite(full ?? dab), palette)) ? 'in' : elsewhere(dab);
    };
  }
  return (dab, strength, full) => {
    if (full) return strength >= threshold ? 'in' : elsewhere(dab);
    return isWhite(onWhite(dab)) && !whiteIsShape ? elsewhere(dab) : 'in';
  };
}

/** A mask shows what is beneath it where more than the threshold comes through. */
function maskRule(threshold: number, coverOnly: boolean): Rule {
  return (dab) => {
    const through = lightOf(dab, coverOnly) * dab.alpha;
    if (through >= threshold) return 'in';
    return 1 - dab.alpha + through < threshold ? 'out' : 'leave';
  };
}

/** CSS Masking 1, section 7.10.1. */
const lightOf = ({ rgb }: Dab, coverOnly: boolean): number => (coverOnly ? 1 : (0.2125 * rgb[0] + 0.7154 * rgb[1] + 0.0721 * rgb[2]) / 255);

/** What a stretch of painting adds to the form and what it takes from all that lies below. The two never overlap. */
interface Change {
  readonly adds: Region;
  readonly takes: Region;
}

const nothing: Change = { adds: emptyRegion, takes: emptyRegion };

export interface Read {
  readonly region: Region;
  /** A gradient was cut across at the threshold. */
  readonly fades: boolean;
}

/** The form that a scene makes under a rule. */
export function readScene(scene: Scene, rule: Rule, how: How): Read {
  let fades = false;
  const changes = changesOf(scene, rule, how, () => {
    fades = true;
  });
  // Nothing lies below the first change, so what it takes is of no interest, nor what its heirs take.
  return { region: addsOf(changes), fades };
}

function addsOf(changes: readonly Change[]): Region {
  if (changes.length <= 1) return changes[0]?.adds ?? emptyRegion;
  const half = changes.length >> 1;
  const above = folded(changes.slice(half));
  return over(addsOf(changes.slice(0, half)), above.takes, above.adds);
}

/** What all parts of a reading share. */
export interface How {
  readonly threshold: number;
  /** Sees rings before they are united, and may throw. */
  readonly check: (rings: readonly Float64Array[]) => void;
  /** Called when a mask lets through by halves. */
  readonly soft: () => void;
}

function changesOf(items: Scene, by: Rule, how: How, split: () => void): Change[] {
  const out: Change[] = [];
  let run: { kind: 'adds' | 'takes'; regions: Region[] } | undefined;
  const flush = (): void => {
    if (run) out.push({ ...nothing, [run.kind]: uniteMany(run.regions, how.check) });
    run = undefined;
  };
  const push = (kind: 'adds' | 'takes', region: Region): void => {
    if (region.rings.length === 0) return;
    if (run?.kind !== kind) flush();
    run ??= { kind, regions: [] };
    run.regions.push(region);
  };
  for (const item of items) {
    if (!('scene' in item)) {
      const parts = effects(item.region, item.paint, by);
      if (parts.split) split();
      push('takes', parts.takes);
      push('adds', parts.adds);
      continue;
    }
    const inside = folded(changesOf(item.scene, by, how, split));
    const within = windowOf(item, how);
    const cut = (region: Region): Region => (within ? common(region, within) : region);
    push('takes', cut(inside.takes));
    push('adds', cut(inside.adds));
  }
  flush();
  return out;
}

/** Where a group shows; undefined: everywhere. */
export function windowOf({ clip, mask }: Group, how: How): Region | undefined {
  const through = mask ? maskRegion(mask, how) : undefined;
  return clip && through ? common(clip, through) : (clip ?? through);
}

function maskRegion(mask: Mask, how: How): Region {
  const by = maskRule(how.threshold, mask.coverOnly);
  const noticing: Rule = (dab, strength) => {
    const through = lightOf(dab, mask.coverOnly) * dab.alpha;
    const half = (v: number): boolean => v > 0.1 && v < 0.9;
    if (half(through) || half(dab.alpha)) how.soft();
    return by(dab, strength);
  };
  const shown = common(folded(changesOf(mask.scene, noticing, how, how.soft)).adds, mask.window);
  return mask.outer && shown.rings.length > 0 ? common(shown, maskRegion(mask.outer, how)) : shown;
}

/** All changes as one, halves first, so that thousands of them cost little more than one. */
function folded(changes: readonly Change[]): Change {
  if (changes.length === 0) return nothing;
  if (changes.length === 1) return changes[0];
  const half = changes.length >> 1;
  const below = folded(changes.slice(0, half)),
    above = folded(changes.slice(half));
  return { adds: over(below.adds, above.takes, above.adds), takes: over(below.takes, above.adds, above.takes) };
}

const over = (below: Region, away: Region, more: Region): Region => together(minus(below, away), more);

function together(a: Region, b: Region): Region {
  if (a.rings.length === 0) return b;
  return b.rings.length === 0 ? a : uniteMany([a, b]);
}

/** `takeAway`, leaving alone every ring that the other does not reach. */
function minus(from: Region, away: Region): Region {
  if (from.rings.length === 0 || away.rings.length === 0) return from;
  const box = regionBox(away);
  const meets = (ring: Float64Array): boolean => overlap(regionBox({ rings: [ring] }), box);
  const near = from.rings.filter(meets);
  if (near.length === 0) return from;
  return { rings: [...from.rings.filter((ring) => !meets(ring)), ...takeAway({ rings: near }, away).rings] };
}

const overlap = (a: Box, b: Box): boolean => a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

function effects(region: Region, paint: Paint, rule: Rule): Change & { readonly split: boolean } {
  const { gradient } = paint;
  if (!gradient) {
    const effect = rule(paint.stops[0], 1);
    return { adds: effect === 'in' ? region : emptyRegion, takes: effect === 'out' ? region : emptyRegion, split: false };
  }
  const { full, strengthAt } = strengthOf(paint);
  const effectAt = (at: number): Effect => rule(dabAt(paint, at), strengthAt(at), full);
  const where = (effect: Effect): Region => {
    const bands = bandsWhere(gradient, region, (at) => effectAt(at) === effect);
    return bands.rings.length > 0 ? common(region, bands) : emptyRegion;
  };
  const looks = Array.from({ length: 33 }, (_, i) => effectAt(i / 32));
  if (looks.every((effect) => effect === looks[0]))
    return { adds: looks[0] === 'in' ? region : emptyRegion, takes: looks[0] === 'out' ? region : emptyRegion, split: false };
  const adds = where('in'),
    takes = where('out');
  return { adds, takes, split: adds.rings.length > 0 && looks.includes('in') };
}
