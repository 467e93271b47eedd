import { mapRegion } from '../place.ts';
import { takeAway, tidy, unite } from '../polygons.ts';
import { emptyRegion, regionBox, ringArea, type Region } from '../region.ts';
import { readFont, type Font } from './font.ts';

export type Weight = 'regular' | 'semibold' | 'bold';
export const weights: readonly Weight[] = ['regular', 'semibold', 'bold'];

let files: Readonly<Record<Weight, Uint8Array>> | undefined;
const read = new Map<Weight, Font>();

/** Hands over the fonts in `assets/`, from which letters are made and text in drawings is read. */
export function prepareLetters(fonts: Readonly<Record<Weight, Uint8Array>>): void {
  if (files === fonts) return;
  files = fonts;
  read.clear();
}

/** The fonts' files, for reading text in drawings; none before `prepareLetters`. */
export const fontFiles = (): readonly Uint8Array[] => (files ? weights.map((weight) => files![weight]) : []);

function fontOf(weight: Weight): Font {
  if (!files) throw new Error('prepareLetters has not been called');
  let font = read.get(weight);
  if (!font) {
    font = readFont(files[weight]);
    read.set(weight, font);
  }
  return font;
}

export interface Lettering {
  readonly text: string;
  /** Height of a capital letter. */
  readonly capHeightMm: number;
  readonly weight: Weight;
  /** Width of the bridges that hold what is inside an O or an A; 0: none. */
  readonly bridgeMm: number;
  /** More than usual between letters. */
  readonly spaceMm: number;
}

export interface LettersMade {
  readonly region: Region;
  /** Characters that the font does not have. */
  readonly missing: readonly string[];
}

/** From one line to the next, of a capital's height. */
const lineStep = 1.7;

/** Lines of stencil letters: each letter is one opening or several, and nothing inside one is loose. */
export function makeLetters({ text, capHeightMm, weight, bridgeMm, spaceMm }: Lettering): LettersMade {
  const font = fontOf(weight);
  const k = capHeightMm / font.capHeight;
  const missing = new Set<string>();
  const letters: Region[] = [];
  text.split(/\r?\n/).forEach((line, row) => {
    let x = 0;
    for (const character of line) {
      const glyph = font.glyph(character);
      if (!glyph) {
        missing.add(character);
        continue;
      }
      const left = x;
      const rings = glyph.rings.map((ring) => ring.map((v, i) => (i % 2 === 0 ? left + v * k : row * lineStep * capHeightMm - v * k)));
      if (rings.length > 0) letters.push(bridged(tidy(rings, 'non-zero'), bridgeMm));
      x += glyph.advance * k + spaceMm;
    }
  });
  const region = unite(letters);
  if (region.rings.length === 0) return { region: emptyRegion, missing: [...missing] };
  const box = regionBox(region);
  return { region: mapRegion(region, (px, py) => [px - box.minX, py - box.minY]), missing: [...missing] };
}

/** A side that is so many times as thick as the other gets no bridge. */
const tooThick = 2.2;

/**
 * Bridges as stencil letters have them: upright through the middle of what is inside, above and below where both are thin,
 * else only through the thinner side.
 */
export function bridged(letter: Region, bridgeMm: number): Region {
  if (!(bridgeMm > 0)) return letter;
  let signed = 0;
  for (const ring of letter.rings) signed += ringArea(ring);
  const holes = letter.rings.filter((ring) => Math.sign(ringArea(ring)) !== Math.sign(signed));
  if (holes.length === 0) return letter;
  const strips: Float64Array[] = [];
  for (const hole of holes) {
    const box = regionBox({ rings: [hole] });
    const x = middleOf(hole);
    const crossings = crossingsAt(letter.rings, x);
    const inHole = crossingsAt([hole], x);
    const top = Math.min(...inHole),
      bottom = Math.max(...inHole);
    const before = crossings.filter((y) => y < top - 1e-6),
      after = crossings.filter((y) => y > bottom + 1e-6);
    const above = before.length > 0 ? Math.max(...before) : undefined,
      below = after.length > 0 ? Math.min(...after) : undefined;
    const up = above === undefined ? Infinity : top - above,
      down = below === undefined ? Infinity : below - bottom;
    const inside = Math.min((bottom - top) / 2, bridgeMm + (box.maxY - box.minY) / 4);
    const side = (from: number, to: number): void => {
      const half = bridgeMm / 2;
      strips.push(Float64Array.of(x - half, from, x + half, from, x + half, to, x - half, to));
    };
    // A little farther out than the outline in the middle: it may fall away to the sides.
    const past = bridgeMm * 0.75;
    if (above !== undefined && up <= tooThick * down) side(above - past, top + inside);
    if (below !== undefined && down <= tooThick * up) side(bottom - inside, below + past);
  }
  return takeAway(letter, tidy(strips, 'non-zero'));
}

/** Where most of the hole lies, across. */
function middleOf(ring: Float64Array): number {
  let area = 0,
    sum = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const cross = ring[j] * ring[i + 1] - ring[i] * ring[j + 1];
    area += cross;
    sum += (ring[j] + ring[i]) * cross;
  }
  return sum / (3 * area);
}

/** Heights at which outlines cross an upright line. */
function crossingsAt(rings: readonly Float64Array[], x: number): number[] {
  const out: number[] = [];
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const a = ring[j],
        b = ring[i];
      if (a <= x !== b <= x) out.push(ring[j + 1] + ((ring[i + 1] - ring[j + 1]) * (x - a)) / (b - a));
    }
  }
  return out.sort((p, q) => p - q);
}
