import { useLayoutEffect, useRef } from 'preact/hooks';
import { isBlackStripe, type Crop } from '../../../../core/separate/index.ts';
import type { Raster } from '../worker/protocol.ts';

interface Props {
  readonly raster: Raster;
  /** Only this part of it, in shares. */
  readonly crop?: Crop;
  /** Struck through where not 0. */
  readonly strike?: Uint8Array | null;
  readonly label: string;
}

/** A raster as wide as its box. */
export function RasterCanvas({ raster, crop, strike = null, label }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const at = (share: number, of: number): number => Math.round(share * of);
  const left = crop ? at(crop.x, raster.width) : 0,
    top = crop ? at(crop.y, raster.height) : 0;
  const width = crop ? Math.max(1, at(crop.width, raster.width)) : raster.width,
    height = crop ? Math.max(1, at(crop.height, raster.height)) : raster.height;
  useLayoutEffect(() => {
    const element = canvas.current;
    const context = element?.getContext('2d');
    if (!element || !context) return;
    element.width = width;
    element.height = height;
    const words = strike ? struckThrough(raster, strike) : raster.words;
    context.putImageData(
      new ImageData(new Uint8ClampedArray(words.buffer), raster.width, raster.height),
      -left,
      -top,
      left,
      top,
      width,
      height,
    );
  }, [raster, strike, left, top, width, height]);
  return <canvas ref={canvas} class="picture-raster" role="img" aria-label={label} style={{ aspectRatio: `${width} / ${height}` }} />;
}

function struckThrough({ words, width, height }: Raster, mask: Uint8Array): Uint32Array<ArrayBuffer> {
  const out = words.slice();
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (mask[i] !== 0) out[i] = isBlackStripe(x, y, width) ? 0xff000000 : 0xffffffff;
    }
  return out;
}
