import { useLayoutEffect, useRef } from 'preact/hooks';

interface Props {
  /** What a film covers, 0 (nothing) to 255 (all), row by row. */
  readonly plane: Uint8Array;
  readonly width: number;
  readonly height: number;
  /** No wider than this, px. */
  readonly widestPx: number;
  /** Empty where what stands beside it says the same. */
  readonly label: string;
  readonly class?: string;
}

/** A run of tone as its film shows it: the darker, the more ink passes. */
export function PlaneCanvas({ plane, width, height, widestPx, label, class: name }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const step = Math.max(1, Math.ceil(width / widestPx));
  const [w, h] = [Math.max(1, Math.floor(width / step)), Math.max(1, Math.floor(height / step))];
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context) return;
    const image = context.createImageData(w, h);
    for (let y = 0; y < h; y++)
      for (let x = 0; x < w; x++) {
        const at = (y * w + x) * 4;
        image.data.fill(255 - meanOf(plane, width, x * step, y * step, step), at, at + 3);
        image.data[at + 3] = 255;
      }
    context.putImageData(image, 0, 0);
  }, [plane, w, h, step, width]);
  const said = label === '' ? ({ 'aria-hidden': true } as const) : ({ role: 'img', 'aria-label': label } as const);
  return <canvas ref={canvas} class={name} width={w} height={h} {...said} />;
}

/** Of a square: one pixel picked from it would make grain and edges coarser than they are. */
function meanOf(plane: Uint8Array, width: number, left: number, top: number, step: number): number {
  const bottom = Math.min(top + step, plane.length / width);
  let sum = 0;
  for (let y = top; y < bottom; y++) for (let x = left; x < left + step; x++) sum += plane[y * width + x];
  return Math.round(sum / ((bottom - top) * step));
}
