import { cropOf, tidyCrop, type LostDetail } from '../../../../core/separate/index.ts';
import { step, words } from '../../../store/words.ts';
import { sayLength } from '../../../ui/fields/units.ts';
import { setPicture } from '../edits.ts';
import type { PicturePartProps } from '../part.ts';
import { make } from '../state.ts';

const mostRuns = 8,
  leastCrop = 0.2;

/** What the knife lost of the drawing, and three ways out of it, each one touch. */
export function LostDrawing({ bench, job, picture, read, lost }: PicturePartProps & { readonly lost: LostDetail }) {
  const w = words().picture;
  const { image, units } = job;
  const [x, y] = lost.atMm;
  const larger = lost.imageWidthMm / image.widthMm;
  const closer = (): void => {
    const crop = cropOf(picture.crop, read, image),
      share = Math.max(leastCrop, 1 / larger);
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
  const enlarge = (): void => {
    bench.edit(step('imageSize'), (j) => ({
      ...j,
      image: { ...j.image, widthMm: lost.imageWidthMm, heightMm: Math.round(j.image.heightMm * larger) },
    }));
    void make(bench);
  };
  const add = (): void => {
    setPicture(bench, 'layers', { layers: picture.layers + (picture.cutPairs ? 2 : 1) });
    void make(bench);
  };
  const told = (): string => {
    const [left, top] = [sayLength(x, units, 0), sayLength(y, units, 0)];
    if (lost.part === 'dot' || lost.part === 'dots') return w.lostDots(lost.part === 'dots', left, top);
    return lost.part ? w.lostPart(lost.part) : w.lostAt(left, top);
  };
  return (
    <section class="lost-drawing" aria-label={w.lostDrawing}>
      <p>
        <b>{told()}</b>
      </p>
      <div class="row">
        <button type="button" class="button button-line" onClick={closer}>
          {w.cropCloser}
        </button>
        {!picture.over && lost.imageWidthMm <= 1500 && (
          <button type="button" class="button button-line" onClick={enlarge}>
            {w.enlargeTo(sayLength(lost.imageWidthMm, units, 0))}
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
