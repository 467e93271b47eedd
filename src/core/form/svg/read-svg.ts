import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { list, name as asName, say, type Saying } from '../../../words/say.ts';
import { fail, problem, ProblemError } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { fileAt } from '../file-at.ts';
import { cutToBox } from '../polygons.ts';
import { mapRegion } from '../place.ts';
import { regionArea } from '../region.ts';
import type { Region } from '../region.ts';
import { whiteHex } from './paint/colours.ts';
import { guardSvg, type GuardedDrawing } from './guard/guard.ts';
import { readScene, ruleOf, usualThreshold, type DrawingReading, type How } from './reading.ts';
import { sceneOf, type Scene } from './paint/scene.ts';
import { lookAt, type Seen } from './paint/seen.ts';
import { fontFiles } from '../made/letters.ts';
import { refuseTangle } from './guard/tangle.ts';
import { readTree } from './tree.ts';

/** A drawing read: its visible shapes united, at its own size, from the top left corner of its page. */
export interface Drawing {
  readonly region: Region;
  readonly widthMm: number;
  readonly heightMm: number;
  /** False when the drawing's size is in pixels only (taken as 1/96 in): its true size should come from the job. */
  readonly hasPhysicalUnits: boolean;
  /** What it was taken for. */
  readonly reading: DrawingReading;
  /** The colours that it shows; none in a file of bare outlines. */
  readonly seen: Seen;
  readonly problems: readonly Problem[];
}

/** Drawings are flattened as if their longer side were this long, so that they bear enlarging. */
const workingSideMm = 400;
const mmPerPx = 25.4 / 96;
/** In small letters: text in these becomes outlines. */
const fontsAtHand: ReadonlySet<string> = new Set(['open sans']);
const noFonts: ReadonlySet<string> = new Set();
let ready: Promise<void> | undefined;
let done = false;

/** Starts the drawing normaliser. `wasm`: the bytes (or compiled module) of @resvg/resvg-wasm's index_bg.wasm. Once is enough; more does no harm. */
export async function prepareDrawings(wasm: BufferSource | WebAssembly.Module): Promise<void> {
  ready ??= initWasm(wasm);
  await ready;
  done = true;
}

/** A drawing flattened once, to be read in one way or another. */
export interface OpenDrawing {
  readonly seen: Seen;
  /** The reading that is taken while nobody says otherwise. */
  readonly guess: DrawingReading;
  readonly read: (asked?: DrawingReading) => Drawing;
}

/**
 * Reads an SVG text: all of it that is seen, or what `reading` says. `file`: its name, for messages. After `prepareDrawings`.
 * Throws ProblemError when it can't be cut: not SVG, text, pictures, nothing visible, too large.
 */
export function readSvg(text: string, file: string, reading?: DrawingReading): Drawing {
  return openSvg(text, file).read(reading);
}

export function openSvg(text: string, file: string): OpenDrawing {
  if (!done) throw new Error('prepareDrawings has not been awaited');
  const place = fileAt(file);
  const guarded = guardSvg(text, file, fontFiles().length > 0 ? fontsAtHand : noFonts);
  const { root, byId } = readTree(normalise(guarded.text, place));
  const widthPx = Number(root.attributes.width),
    heightPx = Number(root.attributes.height);
  if (!(widthPx > 0) || !(heightPx > 0)) sizeless(place);
  const view = (root.attributes.viewBox ?? '').split(/[\s,]+/).map(Number);
  const [vx, vy, vw, vh] =
    view.length === 4 && view.every(Number.isFinite) && view[2] > 0 && view[3] > 0 ? view : [0, 0, widthPx, heightPx];
  // The page on the working scale.
  const perPx = workingSideMm / Math.max(widthPx, heightPx);
  const width = widthPx * perPx,
    height = heightPx * perPx;
  const fit = fitView(root.attributes.preserveAspectRatio, width, height, vw, vh);
  const problems = new Map<string, Problem>();
  const scene = sceneOf(root, [fit.sx, 0, 0, fit.sy, fit.dx - vx * fit.sx, fit.dy - vy * fit.sy], {
    reachMm: workingSideMm,
    byId,
    place,
    problems,
  });
  const errors = [...problems.values()].filter((p) => p.severity === 'error');
  if (errors.length) throw new ProblemError(errors);
  const check = (rings: readonly Float64Array[]): void => refuseTangle(rings, place);
  const seen = lookAt(scene, width, height, { threshold: usualThreshold, check, soft: () => undefined });
  const guess = guessed(seen);
  return {
    seen,
    guess,
    read: (asked) => readOpen({ scene, seen, guess, guarded, problems, place, check, width, height, widthPx, heightPx, perPx }, asked),
  };
}

/** Everything that is drawn, as long as that says anything: on a card printed all over, what is dark. */
function guessed({ colours, fullPage }: Seen): DrawingReading {
  if (colours.length === 0) return { what: 'silhouette', white: 'shape' };
  return { what: fullPage && colours.length > 1 ? 'dark' : 'silhouette', white: 'paper' };
}

interface Opened {
  readonly scene: Scene;
  readonly seen: Seen;
  readonly guess: DrawingReading;
  readonly guarded: GuardedDrawing;
  readonly problems: ReadonlyMap<string, Problem>;
  readonly place: Saying;
  readonly check: (rings: readonly Float64Array[]) => void;
  readonly width: number;
  readonly height: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly perPx: number;
}

function readOpen(opened: Opened, asked: DrawingReading | undefined): Drawing {
  const { scene, seen, guess, guarded, place, width, height, widthPx, heightPx, perPx } = opened;
  const problems = new Map(opened.problems);
  const tell = (severity: 'warning' | 'note', code: string, message: Saying, advice: Saying): void =>
    void problems.set(code, problem(severity, code, place, message, advice));
  const reading = asked ?? guess;
  const threshold = reading.threshold ?? usualThreshold;
  const how: How = {
    threshold,
    check: opened.check,
    soft: () => {
      if (reading.threshold === undefined) tell('warning', 'drawing-soft-mask', say('form.softMask'), say('form.chooseThreshold'));
    },
  };
  const palette = seen.colours.map((c) => c.colour);
  const { region: shapes, fades } = readScene(scene, ruleOf(reading, palette), how);
  const onPage = cutToBox(shapes, { minX: 0, minY: 0, maxX: width, maxY: height });
  const areaAll = regionArea(shapes),
    area = regionArea(onPage);
  if (!(area > 0)) {
    const why = areaAll > 0 ? say('form.offPage') : say(seen.colours.length > 0 ? 'form.nothingLeft' : 'form.nothingVisible');
    const advice = asked && seen.colours.length > 0 ? say('form.readOtherwise') : say('form.fillAndFit');
    throw new ProblemError([problem('error', 'drawing-empty', place, why, advice), ...guarded.problems]);
  }
  if (areaAll - area > 0.001 * areaAll) tell('warning', 'drawing-beyond-page', say('form.beyondPage'), say('form.largerPage'));
  if (fades && reading.threshold === undefined) tell('warning', 'drawing-fades', say('form.fades'), say('form.chooseThreshold'));
  if (asked === undefined && seen.colours.length > 1) {
    const values = { n: seen.colours.length };
    tell(
      'warning',
      'drawing-has-colours',
      guess.what === 'dark' ? say('form.coloursDarkTaken', values) : say('form.coloursAllTaken', values),
      say('form.readOtherwise'),
    );
  } else if (asked === undefined && seen.whiteOnTop && guess.white === 'paper')
    tell('note', 'drawing-has-white', say('form.whiteIsPaper'), say('form.whiteAsShape'));
  const back = mmPerPx / perPx;
  const strange =
    asked?.what === 'colours'
      ? (asked.colours ?? []).filter((c) => !palette.includes(c.toLowerCase()) && c.toLowerCase() !== whiteHex)
      : [];
  if (strange.length > 0)
    tell(
      'warning',
      'drawing-other-colours',
      say('form.coloursNotThere', {
        colours: list(
          strange.map((c) => asName(c)),
          'comma',
        ),
      }),
      say('form.coloursThere', {
        colours: list(
          palette.map((c) => asName(c)),
          'comma',
        ),
      }),
    );
  return {
    region: mapRegion(onPage, (x, y) => [x * back, y * back]),
    widthMm: physicalMm(guarded.root.width) ?? widthPx * mmPerPx,
    heightMm: physicalMm(guarded.root.height) ?? heightPx * mmPerPx,
    hasPhysicalUnits: physicalMm(guarded.root.width ?? guarded.root.height) !== undefined,
    reading,
    seen,
    problems: [...guarded.problems, ...problems.values()],
  };
}

const unitMm: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72, pc: 25.4 / 6, q: 0.25 };

/** “18 cm” in mm; undefined for pixels, percentages and anything else without a true size. */
function physicalMm(text: string | undefined): number | undefined {
  const found = /^\s*\+?(\d*\.?\d+(?:e[-+]?\d+)?)\s*(mm|cm|in|pt|pc|q)\s*$/i.exec(text ?? '');
  return found ? Number(found[1]) * unitMm[found[2].toLowerCase()] : undefined;
}

function sizeless(place: Saying): never {
  fail('drawing-no-size', place, say('form.pageWithoutSize'), say('form.givePageSize'));
}

function normalise(text: string, place: Saying): string {
  let resvg: InstanceType<typeof Resvg> | undefined;
  try {
    resvg = new Resvg(text, { font: { loadSystemFonts: false, fontBuffers: [...fontFiles()], defaultFontFamily: 'Open Sans' } });
    return resvg.toString();
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    if (/invalid size/i.test(why)) sizeless(place);
    return fail('drawing-not-read', place, say('form.notUnderstood'), say('form.saveWithoutEffects'));
  } finally {
    resvg?.free();
  }
}

/** SVG 2 section 8.6: where the viewBox lies on the page. */
function fitView(
  rule: string | undefined,
  width: number,
  height: number,
  vw: number,
  vh: number,
): { sx: number; sy: number; dx: number; dy: number } {
  const sx = width / vw,
    sy = height / vh;
  const [align = 'xMidYMid', how = 'meet'] = (rule ?? '').trim().split(/\s+/).filter(Boolean);
  if (align === 'none') return { sx, sy, dx: 0, dy: 0 };
  const s = how === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy);
  const share = (key: string): number => (key === 'Min' ? 0 : key === 'Max' ? 1 : 0.5);
  return { sx: s, sy: s, dx: (width - vw * s) * share(align.slice(1, 4)), dy: (height - vh * s) * share(align.slice(5, 8)) };
}
