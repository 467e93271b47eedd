// An independent look at a written stencil: drawn by Skia (@napi-rs/canvas, MIT), parts and distances by OpenCV
// (@techstark/opencv-js, Apache-2.0), at 0.05 mm a pixel. It shares no code with the room that made the certificate.
import { createRequire } from 'node:module';
import { createCanvas, Path2D } from '@napi-rs/canvas';
import type * as Vision from '@techstark/opencv-js';

type Cv = typeof Vision;
interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A place narrower than promised. */
export interface NarrowPlace {
  readonly what: 'paper' | 'opening';
  /** neck: between two broad places; knob: a broader place behind it; sliver: narrow all over; apart: held by nothing broad. */
  readonly kind: 'neck' | 'knob' | 'sliver' | 'apart';
  readonly widthMm: number;
  readonly atMm: readonly [number, number];
}

const step = 0.05;
/** Widths are told apart to this. */
const levelMm = 0.1;
/** Less than this is the raster's own doing. */
const leastMm2 = 0.1;
/** Allowed under the promise, and for the raster: a width of whole pixels is known to one of them. */
export const allowedMm = 0.1;

/** Side of the largest picture that there is room for, with all that is made of it. */
const roomPx = 11_000;

let cv: Cv;
export async function prepareVision(): Promise<void> {
  const loaded = createRequire(import.meta.url)('@techstark/opencv-js') as Cv | Promise<Cv>;
  cv = loaded instanceof Promise ? await loaded : loaded;
  if (!cv.Mat)
    await new Promise<void>((resolve) => {
      cv.onRuntimeInitialized = resolve;
    });
  // All its memory at once: where it grows in the middle of a look, what was looked at is gone without a word.
  new cv.Mat(roomPx, roomPx, cv.CV_32FC1).delete();
}

/**
 * So much finer a place has to be seen again, and so near, with so much around it: paper finer than a pixel is gone here and there,
 * and joins what lies beside it.
 */
const again = 2,
  againMm = 3,
  aroundMm = 12;

/** Every place of paper or opening that is narrower than promised − 0.1 mm, of the knife paths `d` cut into a sheet. */
export function narrowPlaces(d: string, cut: Box, promised: Promised): NarrowPlace[] {
  if (!d.trim()) return [];
  return placesAt(1, d, cut, promised).filter(({ what, atMm: [x, y] }) => {
    const around = {
      minX: Math.max(cut.minX, x - aroundMm),
      minY: Math.max(cut.minY, y - aroundMm),
      maxX: Math.min(cut.maxX, x + aroundMm),
      maxY: Math.min(cut.maxY, y + aroundMm),
    };
    const finer = placesAt(again, d, around, promised);
    return finer.some((n) => n.what === what && Math.hypot(n.atMm[0] - x, n.atMm[1] - y) <= againMm);
  });
}

interface Promised {
  readonly paperMm: number;
  readonly openingMm: number;
}

/** The same at a pixel so many times finer. */
function placesAt(times: number, d: string, cut: Box, promised: Promised): NarrowPlace[] {
  const edge = 4,
    pixelMm = step / times;
  const width = Math.ceil((cut.maxX - cut.minX + 2 * edge) / pixelMm),
    height = Math.ceil((cut.maxY - cut.minY + 2 * edge) / pixelMm);
  const canvas = createCanvas(width, height);
  const pen = canvas.getContext('2d');
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, width, height);
  pen.scale(1 / pixelMm, 1 / pixelMm);
  pen.translate(edge - cut.minX, edge - cut.minY);
  pen.fillStyle = '#000';
  pen.fill(new Path2D(d), 'evenodd');
  const rgba = pen.getImageData(0, 0, width, height).data;
  const paper = new cv.Mat(height, width, cv.CV_8UC1);
  // A matrix makes a new view each time it is asked for its data: asked once.
  const whole = paper.data;
  for (let i = 0; i < width * height; i++) whole[i] = rgba[4 * i] >= 128 ? 255 : 0;
  const openings = new cv.Mat();
  cv.bitwise_not(paper, openings);
  const place = (p: NarrowPlace): NarrowPlace => ({
    ...p,
    widthMm: p.widthMm / times,
    atMm: [cut.minX - edge + (p.atMm[0] + 0.5) * pixelMm, cut.minY - edge + (p.atMm[1] + 0.5) * pixelMm],
  });
  const found = [
    ...narrow(paper, 'paper', times * (promised.paperMm - allowedMm)),
    ...narrow(openings, 'opening', times * (promised.openingMm - allowedMm)),
  ];
  paper.delete();
  openings.delete();
  return found.map(place);
}

/** Widest whole width of which a distance to the nearest pixel outside is the half. */
const widthOf = (distance: number): number => 2 * distance * step;

function narrow(mask: Vision.Mat, what: NarrowPlace['what'], leastMm: number): NarrowPlace[] {
  const found: NarrowPlace[] = [];
  const distance = new cv.Mat();
  cv.distanceTransform(mask, distance, cv.DIST_L2, cv.DIST_MASK_PRECISE);
  const { rows, cols } = mask;
  const d = distance.data32F;
  const radius = leastMm / 2 / step;
  // Broad: a disc of the least width fits around the pixel.
  const core = atLeast(distance, radius);
  const cores = labelled(core);
  // Reached by such a disc.
  const notCore = new cv.Mat();
  cv.bitwise_not(core, notCore);
  const toCore = new cv.Mat();
  cv.distanceTransform(notCore, toCore, cv.DIST_L2, cv.DIST_MASK_PRECISE);
  const rest = new cv.Mat(rows, cols, cv.CV_8UC1);
  const far = toCore.data32F;
  // One pixel to spare: what the disc's raster edge leaves is no place of its own.
  const inside = mask.data,
    left = rest.data;
  for (let i = 0; i < rows * cols; i++) left[i] = inside[i] && far[i] > radius + 1 ? 255 : 0;
  const rests = labelled(rest);
  for (let label = 1; label < rests.count; label++) {
    const areaMm2 = rests.stats(label, cv.CC_STAT_AREA) * step * step;
    if (areaMm2 < leastMm2 / 4) continue;
    const margin = Math.ceil(radius + 4);
    const x0 = Math.max(0, rests.stats(label, cv.CC_STAT_LEFT) - margin),
      y0 = Math.max(0, rests.stats(label, cv.CC_STAT_TOP) - margin);
    const w = Math.min(cols, rests.stats(label, cv.CC_STAT_LEFT) + rests.stats(label, cv.CC_STAT_WIDTH) + margin) - x0,
      h = Math.min(rows, rests.stats(label, cv.CC_STAT_TOP) + rests.stats(label, cv.CC_STAT_HEIGHT) + margin) - y0;
    const at = (i: number): number => (y0 + Math.floor(i / w)) * cols + x0 + (i % w);
    // What this place touches: broad paper within two pixels of it, in how many arcs.
    const own = new cv.Mat(h, w, cv.CV_8UC1, new cv.Scalar(0));
    const mine = own.data;
    let widest = 0,
      widestAt = 0;
    for (let i = 0; i < w * h; i++) {
      const p = at(i);
      if (rests.labels[p] !== label) continue;
      mine[i] = 255;
      if (d[p] > widest) {
        widest = d[p];
        widestAt = p;
      }
    }
    const grown = new cv.Mat();
    const brush = cv.getStructuringElement(cv.MORPH_ELLIPSE, new cv.Size(7, 7));
    cv.dilate(own, grown, brush);
    const touch = new cv.Mat(h, w, cv.CV_8UC1, new cv.Scalar(0));
    const wide = grown.data,
      touching = touch.data;
    for (let i = 0; i < w * h; i++) if (wide[i] && inside[at(i)] && !mine[i] && far[at(i)] <= radius + 1) touching[i] = 255;
    // Arcs nearer than a quarter of a millimetre to one another are one.
    const joint = new cv.Mat();
    cv.dilate(touch, joint, brush);
    const jointed = joint.data;
    const arcs = labelled(joint);
    const contacts: number[] = [];
    for (let a = 1; a < arcs.count; a++) if (arcs.stats(a, cv.CC_STAT_AREA) >= 3) contacts.push(a);
    const spot = (p: number): [number, number] => [p % cols, Math.floor(p / cols)];
    if (contacts.length === 0) {
      if (areaMm2 >= leastMm2) found.push({ what, kind: 'sliver', widthMm: widthOf(widest), atMm: spot(widestAt) });
    } else {
      // Going down from the least width: where do the arcs join, and does anything stand apart that is broader than its way there?
      const joined = (level: number): { parts: ReturnType<typeof labelled>; owns: Set<number>; lone: Map<number, number> } => {
        const layer = new cv.Mat(h, w, cv.CV_8UC1, new cv.Scalar(0));
        const now = layer.data;
        for (let i = 0; i < w * h; i++)
          if ((mine[i] && d[at(i)] >= level) || (!mine[i] && (touching[i] || (jointed[i] && inside[at(i)] && far[at(i)] <= radius + 1))))
            now[i] = 255;
        const parts = labelled(layer);
        layer.delete();
        const owns = new Set<number>();
        for (let i = 0; i < w * h; i++) if (touching[i]) owns.add(parts.labels[i]);
        const lone = new Map<number, number>();
        for (let i = 0; i < w * h; i++) {
          const l = parts.labels[i];
          if (l && !owns.has(l)) lone.set(l, Math.max(lone.get(l) ?? 0, d[at(i)]));
        }
        return { parts, owns, lone };
      };
      let arcsLeft = contacts.length;
      let knob = 0,
        knobAt = widestAt;
      for (let mm = leastMm - levelMm; mm > 0; mm -= levelMm) {
        const level = mm / 2 / step;
        const { parts, owns, lone } = joined(level);
        // Broader by more than a pixel each side than the way to it, and not a speck.
        for (const [l, most] of lone) {
          if (most < level + 1.5 || parts.stats(l, cv.CC_STAT_AREA) * step * step < leastMm2 / 2 || knob > 0) continue;
          knob = mm;
          for (let i = 0; i < w * h; i++) if (parts.labels[i] === l && d[at(i)] === most) knobAt = at(i);
        }
        if (arcsLeft > 1 && owns.size < arcsLeft) {
          found.push({ what, kind: 'neck', widthMm: mm + levelMm, atMm: spot(widestAt) });
          arcsLeft = owns.size;
        }
        parts.free();
      }
      if (knob > 0 && contacts.length === 1) found.push({ what, kind: 'knob', widthMm: knob, atMm: spot(knobAt) });
      else if (arcsLeft > 1) found.push({ what, kind: 'neck', widthMm: levelMm, atMm: spot(widestAt) });
    }
    arcs.free();
    for (const m of [own, grown, brush, touch, joint]) m.delete();
  }
  // After erosion paper is one.
  if (what === 'paper') {
    const frame = cores.labels[0];
    for (let label = 1; label < cores.count; label++) {
      if (label === frame || cores.stats(label, cv.CC_STAT_AREA) < 4) continue;
      const p = cores.labels.indexOf(label);
      found.push({ what, kind: 'apart', widthMm: 0, atMm: [p % cols, Math.floor(p / cols)] });
    }
  }
  cores.free();
  rests.free();
  for (const m of [distance, core, notCore, toCore, rest]) m.delete();
  return found;
}

function atLeast(distance: Vision.Mat, least: number): Vision.Mat {
  const out = new cv.Mat(distance.rows, distance.cols, cv.CV_8UC1);
  const d = distance.data32F,
    to = out.data;
  for (let i = 0; i < d.length; i++) to[i] = d[i] >= least ? 255 : 0;
  return out;
}

function labelled(mask: Vision.Mat) {
  const labels = new cv.Mat(),
    stats = new cv.Mat(),
    centres = new cv.Mat();
  const count = cv.connectedComponentsWithStats(mask, labels, stats, centres, 8, cv.CV_32S);
  centres.delete();
  const figures = stats.data32S,
    columns = stats.cols;
  return {
    count,
    labels: labels.data32S,
    stats: (label: number, which: number): number => figures[label * columns + which],
    free: (): void => {
      labels.delete();
      stats.delete();
    },
  };
}
