import type { Problem } from '../problem.ts';

/** Pixels as they were read, three numbers a pixel, row by row from the top left. */
export type Pixels =
  | { readonly kind: 'srgb8'; readonly data: Uint8Array }
  | { readonly kind: 'srgb16'; readonly data: Uint16Array }
  /** XYZ under D50, 32768 = 1 (how colour profiles write XYZ in 16 bits): the file carried a profile of its own. */
  | { readonly kind: 'xyz16'; readonly data: Uint16Array };

/** A picture as the printmaker sees it: upright, its colour profile honoured. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Pixels;
  /** 0..255 a pixel where the file has transparency: what is see-through stays bare paper. */
  readonly coverage?: Uint8Array;
  readonly format: 'JPEG' | 'PNG' | 'WebP' | 'TIFF';
  /** Name of the colour profile in the file, where it has one other than sRGB. */
  readonly profile?: string;
  /** Warnings: a profile that can't be read, and the like. */
  readonly problems: readonly Problem[];
}

/** What a reader of one format gives before orientation and profile. */
export interface Decoded {
  readonly width: number;
  readonly height: number;
  /** RGB, 3 a pixel; 16-bit numbers span 0..65535. */
  readonly rgb: Uint8Array | Uint16Array;
  readonly coverage?: Uint8Array;
  /** Bytes of the colour profile in the file. */
  readonly profile?: Uint8Array;
  /** 1..8 as Exif and TIFF write it. */
  readonly orientation: number;
  /** Pictures that move: only the first one was read. */
  readonly animated?: boolean;
}

/** Size and make-up as the file's head tells them, before anything is decoded. */
export interface Head {
  readonly format: Picture['format'];
  readonly width: number;
  readonly height: number;
}
