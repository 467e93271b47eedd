import { cropOf, tidyCrop, type Crop, type LostDetail } from '../../../../core/separate/index.ts';
import { step, words } from '../../../store/words.ts';
import { sayLength } from '../../../ui/fields/units.ts';
import { setPicture } from '../edits.ts';
import type { PicturePartProps } from '../part.ts';
import { make } from '../state.ts';
import type { ShownSeparation } from '../worker/protocol.ts';
import { RasterCanvas } from './RasterCanvas.tsx';

const mostRuns = 8,
  leastCrop = 0.2,
  mostWidthMm = 1500;
/** How much of picture and print is shown around what is lost, mm at least and times its own size. */
const shownMm = 30,
  shownTimes = 2;

type Props = PicturePartProps & { readonly result: ShownSeparation };

/** What the knife lost of the drawing, in the picture and as it prints, and three ways out of it, each one touch. */
export function LostDrawing({ bench, job, picture, read, result }: Props) {
  const w = words().picture,
    { image, units } = job,
    { lost } = result;
  const widthMm = Math.max(...lost.map(({ imageWidthMm }) => imageWidthMm));
  const enlarge = (): void => {
    bench.edit(step('imageSize'), (j) => ({
      ...j,
      image: { ...j.image, widthMm, heightMm: Math.round((j.image.heightMm * widthMm) / image.widthMm) },
    }));
    void make(bench);
  };
  const add = (): void => {
    setPicture(bench, 'layers', { layers: picture.layers + (picture.cutPairs ? 2 : 1) });
    void make(bench);
  };
  return (
    <section class="lost-drawing" aria-label={w.lostDrawing}>
      <h2>{w.lostDrawing}</h2>
      <ul class="lost-places">
        {lost.map((one) => (
          <LostPlace key={one.atMm.join()} bench={bench} job={job} picture={picture} read={read} result={result} one={one} />
        ))}
      </ul>
      <div class="row">
        {!picture.over && widthMm <= mostWidthMm && (
          <button type="button" class="button button-line" onClick={enlarge}>
            {w.enlargeTo(sayLength(widthMm, units, 0))}
          </button>
        )}
        {picture.layers + (picture.over ? job.layers.length : 0) < mostRuns && (
          <button type="button" class="button button-line" onClick={add}>
            {w.addRun}
          </button>
        )}
      </div>
    </section>
  );
}

function LostPlace({ bench, job, picture, read, result, one }: Props & { readonly one: LostDetail }) {
  const w = words().picture,
    { image, units } = job,
    [x, y] = one.atMm,
    shown = around(one, image),
    at = [sayLength(x, units, 0), sayLength(y, units, 0)] as const,
    says =
      one.part === 'dot' || one.part === 'dots'
        ? w.lostDots(one.part === 'dots', ...at)
        : one.part
          ? w.lostPart(one.part)
          : w.lostAt(...at);
  const closer = (): void => {
    const crop = cropOf(picture.crop, read, image),
      share = Math.max(leastCrop, image.widthMm / one.imageWidthMm);
    const start = (at: number, of: number): number => Math.max(0, Math.min(1 - share, at / of - share / 2));
    const next = tidyCrop({
      x: crop.x + start(x, image.widthMm) * crop.width,
      y: crop.y + start(y, image.heightMm) * crop.height,
      width: crop.width * share,
      height: crop.height * share,
    });
    setPicture(bench, 'crop', { crop: { ...next } });
    void make(bench);
  };
  return (
    <li class="lost-place">
      <div class="lost-pair">
        <figure>
          <RasterCanvas raster={result.picture} crop={shown} label={`${w.thePicture}: ${says}`} />
          <figcaption>{w.thePicture}</figcaption>
        </figure>
        <figure>
          <RasterCanvas raster={result.print} crop={shown} label={`${w.thePrint}: ${says}`} />
          <figcaption>{w.thePrint}</figcaption>
        </figure>
      </div>
      <b>{says}</b>
      <button type="button" class="button button-line" onClick={closer} aria-label={`${w.cropCloser}: ${says}`}>
        {w.cropCloser}
      </button>
    </li>
  );
}

/** The part of the print around a place, in shares of it; at the edge all that there is. */
function around({ box, atMm: [x, y] }: LostDetail, { widthMm, heightMm }: PicturePartProps['job']['image']): Crop {
  const half = Math.max(shownMm, shownTimes * Math.max(box.maxX - box.minX, box.maxY - box.minY)) / 2,
    share = (at: number, of: number): { from: number; size: number } => {
      const from = Math.max(0, Math.min(of - 2 * half, at - half));
      return { from: from / of, size: Math.min(1, (2 * half) / of) };
    },
    across = share(x, widthMm),
    down = share(y, heightMm);
  return { x: across.from, y: down.from, width: across.size, height: down.size };
}
