import { useEffect } from 'preact/hooks';
import { ways, type Way } from '../../../../core/separate/index.ts';
import { sayPercent } from '../../../ui/fields/format.ts';
import { sayMinutes } from '../../../ui/fields/units.ts';
import { Why } from '../../../ui/fields/Why.tsx';
import { words } from '../../../store/words.ts';
import { setPicture } from '../edits.ts';
import type { PicturePartProps } from '../part.ts';
import { RasterCanvas } from './RasterCanvas.tsx';
import { drawWays, make, making, waysDrawn, waysKey } from '../state.ts';

/** The hand has come to rest, and what was asked for first is done. */
const restMs = 700;

/** The ways to take the picture, small and side by side, with what each asks of the knife: one touch takes it and makes the stencils. */
export function WaysChoice({ bench, job, picture }: Omit<PicturePartProps, 'read'>) {
  const w = words().picture;
  const drawn = waysDrawn.value,
    key = waysKey(bench),
    busy = making.value?.state === 'working' || making.value?.state === 'stopping';
  useEffect(() => {
    if (busy) return;
    const timer = setTimeout(() => void drawWays(bench), restMs);
    return () => clearTimeout(timer);
  }, [key, busy, drawn === null]);
  const take = (way: Way): void => {
    setPicture(bench, 'way', way === 'light' ? { way, cutPairs: false } : { way });
    void make(bench);
  };
  return (
    <section class="ways" aria-label={w.ways}>
      <h2>
        {w.ways}
        <Why of={w.ways}>{w.waysWhy}</Why>
      </h2>
      <div class="ways-row" style={{ '--ratio': String(job.image.widthMm / job.image.heightMm) }}>
        {ways.map((way) => {
          const look = drawn?.key === key ? drawn.ways.find((one) => one.way === way) : undefined;
          return (
            <button key={way} type="button" class="way" aria-pressed={picture.way === way} disabled={busy} onClick={() => take(way)}>
              <span class="way-print">
                {look ? (
                  <RasterCanvas raster={look.print} label={w.wayDrawn(w.wayOf[way])} />
                ) : (
                  <span class="way-empty">{picture.over ? '' : w.wayComing}</span>
                )}
              </span>
              <b>
                {picture.way === way ? '✓ ' : ''}
                {w.wayOf[way]}
              </b>
              <small>{look ? w.wayAsks(sayMinutes(look.minutes), sayPercent(look.structure.kept)) : w.wayIs[way]}</small>
            </button>
          );
        })}
      </div>
    </section>
  );
}
