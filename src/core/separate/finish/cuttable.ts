import { bitsOf, bytesOf, difference, inverted, putBits, type Bits } from '../kernels/bits.ts';
import { closed, dilated, opened, withoutSpecks } from '../kernels/morph.ts';
import { inOrder, relaxed, type Field } from '../kernels/relax.ts';
import { bareWatch, blurLayer, registerObjective, registerPairStep, registerRoom, registerStep } from '../kernels/register.ts';
import { widenLines } from './widen.ts';
import { energyOf } from '../prepare/masks.ts';
import type { SeparateRequest } from '../types.ts';

/** What knife and material demand, in pixels of the raster. */
export interface CutRules {
  readonly openingPx: number;
  readonly paperPx: number;
  /** Parts of ink smaller than this are not worth a cut, paper islands smaller than this not worth a bridge; px. */
  readonly leastInkPx: number;
  readonly leastIslandPx: number;
}

/** A bold print has no use for parts smaller than so many times the least. */
const boldParts = 2.5;

/** Widths in pixels that knife and material demand; half a pixel more, so that the judge, who measures finer, agrees. */
export function cutRulesOf(request: SeparateRequest, mmPerPx: number): CutRules {
  const { material, knife } = request;
  const opening = Math.max(material.leastOpeningMm, knife?.leastWidthMm ?? 0),
    paper = Math.max(material.leastBridgeMm, knife?.leastWidthMm ?? 0);
  const px = (mm: number): number => mm / mmPerPx,
    large = request.way === 'bold' ? boldParts : 1;
  return {
    openingPx: px(opening) + 0.5,
    paperPx: px(paper) + 0.5,
    // Common practice: what is smaller than a few least widths square is lost in cutting or falls out in printing.
    leastInkPx: large * px(2 * opening) ** 2,
    leastIslandPx: large * px(3 * paper) ** 2,
  };
}

/** The knife's rules on a raster of other pixels. @param scale new pixels to an old one */
export function rulesOn(cut: CutRules, scale: number): CutRules {
  return {
    openingPx: cut.openingPx * scale,
    paperPx: cut.paperPx * scale,
    leastInkPx: cut.leastInkPx * scale ** 2,
    leastIslandPx: cut.leastIslandPx * scale ** 2,
  };
}

/**
 * One layer's mask with nothing narrower than the knife and the material allow.
 * @param widen puts lines that went back into it, as broad as they have to be; whether it did
 */
export function cuttableMask(mask: Bits, rules: CutRules, widen?: (cut: Bits) => boolean): Bits {
  const large = (from: Bits): Bits => withoutSpecks(withoutSpecks(from, 0, rules.leastIslandPx), 1, rules.leastInkPx);
  const tidied = (from: Bits): Bits => large(broadEnough(broadEnough(large(from), rules), rules));
  const cut = tidied(mask);
  return widen?.(cut) ? tidied(cut) : cut;
}

const broadEnough = (mask: Bits, rules: CutRules): Bits => opened(closed(mask, rules.paperPx / 2), rules.openingPx / 2);

/**
 * Every layer made cuttable, the largest change first; after each one the layers still open settle again around it,
 * so that they take up what it lost. Then each layer once more around the others as they have become by then, kept where
 * the print gains. `codes` is changed in place.
 * @param pairs two layers a cut: the second is the first turned round
 * @param again how often all layers are gone over again
 * @param off how far layers sit off; left out or 0: as if nothing moved
 */
export function makeCuttable(field: Field, codes: Uint8Array, rules: CutRules, pairs: boolean, again = 0, off?: Off): void {
  const { width, height, layers } = field;
  const all = (1 << layers) - 1;
  const open = Array.from({ length: layers }, (_, i) => i)
    .filter((i) => !(field.frozen & (1 << i)))
    .filter((_, i) => !pairs || i % 2 === 0);
  const bitsAt = (layer: number): number => (pairs ? 3 : 1) << layer;
  const put = (layer: number): Bits => {
    const wanted = bitsOf(codes, layer, width, height);
    const widen = (cut: Bits): boolean => {
      const ink = widenLines(field, codes, layer, wanted, cut, 1, rules.openingPx),
        paper = widenLines(field, codes, layer, wanted, cut, 0, rules.paperPx);
      return ink || paper;
    };
    const mask = cuttableMask(wanted, rules, pairs ? undefined : widen),
      changed = putBits(codes, layer, mask);
    if (pairs)
      putBits(codes, layer + 1, inverted(mask)).words.forEach((word, w) => {
        changed.words[w] |= word;
      });
    return changed;
  };
  let frozen = field.frozen;
  for (const [turn, layer] of byLoss(open, codes, width, height, rules).entries()) {
    const changed = put(layer);
    frozen |= bitsAt(layer);
    // Only around what went is there anything to take up: elsewhere masks stay as they were thought out, traps too.
    if (turn + 1 < open.length)
      holding(codes, off?.held, () => relaxed({ ...field, frozen }, codes, 4, 2e-5, bytesOf(dilated(changed, 1.5))));
  }
  if (off && off.sigmaPx > 0) settleOff({ field: offField(field, codes, off), codes, open, bitsAt, put, off }, again);
  else
    for (let round = 0; round < again; round++) {
      for (const layer of open) {
        const before = codes.slice(),
          energy = energyOf(field, codes, 1);
        holding(codes, off?.held, () => relaxed({ ...field, frozen: all & ~bitsAt(layer) }, codes, 4, 2e-5));
        put(layer);
        if (energyOf(field, codes, 1) >= energy) codes.set(before);
      }
    }
}

/** How far layers sit off by themselves, px, how light each code is, and which pixels stay as they are, other than 0. */
export interface Off {
  readonly sigmaPx: number;
  readonly lightness: Float32Array;
  readonly held?: Uint8Array;
}

/** Settles codes, but not the pixels that are held: a drawing's lines keep one colour. */
function holding(codes: Uint8Array, held: Uint8Array | undefined, settle: () => void): void {
  const before = held && codes.slice();
  settle();
  if (held) for (let i = 0; i < codes.length; i++) if (held[i]) codes[i] = before![i];
}

/**
 * ΔE00 an L* by which a slit is lighter than all around it, which is seen before anything else, or a line darker: where inks
 * overlap it is borne sooner.
 */
export const barePrices = { slitPrice: 2.2, linePrice: 0.8 };

function offField(field: Field, codes: Uint8Array, { sigmaPx, lightness }: Off): Field {
  return inOrder({ ...field, bare: bareWatch(codes, field.width, field.height, lightness, 2 * sigmaPx, barePrices) });
}

interface OffWork {
  readonly field: Field;
  readonly codes: Uint8Array;
  readonly open: readonly number[];
  readonly bitsAt: (layer: number) => number;
  readonly put: (layer: number) => Bits;
  readonly off: Off;
}

/** Every layer once more with the register in mind, cuttable again after each step: a lighter ink goes under a dark edge, and no paper shows between. */
function settleOff({ field, codes, open, bitsAt, put, off }: OffWork, rounds: number): void {
  const room = registerRoom(field, codes, off.sigmaPx);
  let cost = registerObjective(field, codes, room);
  const blurred = (layer: number): void => {
    for (let b = 0; b < field.layers; b++) if (bitsAt(layer) & (1 << b)) blurLayer(codes, b, room);
  };
  for (let round = 0; round < rounds; round++)
    for (const layer of open) {
      const before = codes.slice();
      holding(codes, off.held, () => {
        if (field.paired) registerPairStep(field, codes, layer, room);
        else registerStep(field, codes, layer, room);
      });
      put(layer);
      blurred(layer);
      const now = registerObjective(field, codes, room);
      if (now < cost) {
        cost = now;
        continue;
      }
      codes.set(before);
      blurred(layer);
    }
}

function byLoss(open: readonly number[], codes: Uint8Array, width: number, height: number, rules: CutRules): number[] {
  const loss = open.map((layer) => {
    const before = bitsOf(codes, layer, width, height);
    return { layer, changed: difference(before, broadEnough(before, rules)) };
  });
  return loss.sort((a, b) => b.changed - a.changed || a.layer - b.layer).map(({ layer }) => layer);
}
