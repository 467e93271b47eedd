import { useLayoutEffect, useRef } from 'preact/hooks';

interface Props {
  /** Three bytes a pixel, row by row. */
  readonly rgb: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly label: string;
  readonly class?: string;
  /** At this width on the screen, px (CSS); left out: as its class says. */
  readonly widthPx?: number;
}

/** A picture that was worked out, as it is. */
export function RgbCanvas({ rgb, width, height, label, class: name, widthPx }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context) return;
    const image = context.createImageData(width, height);
    for (let i = 0, at = 0; i < rgb.length; i += 3, at += 4) {
      image.data[at] = rgb[i];
      image.data[at + 1] = rgb[i + 1];
      image.data[at + 2] = rgb[i + 2];
      image.data[at + 3] = 255;
    }
    context.putImageData(image, 0, 0);
  }, [rgb, width, height]);
  const style = widthPx === undefined ? {} : { width: `${widthPx}px`, height: 'auto' };
  return <canvas ref={canvas} class={name} width={width} height={height} role="img" aria-label={label} style={style} />;
}
