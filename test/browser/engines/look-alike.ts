import { createCanvas, loadImage } from '@napi-rs/canvas';

/** A block of a picture, px: letters are drawn a little differently by every engine, blocks of them are not. */
const blockPx = 16;

/** A picture as it is compared: the mean grey of every block, 0..255. */
export interface Blocks {
  readonly columns: number;
  readonly rows: number;
  readonly grey: Float64Array;
}

export async function blocksOf(png: Uint8Array): Promise<Blocks> {
  const image = await loadImage(Buffer.from(png));
  const { width } = image;
  const context = createCanvas(width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, width, image.height);
  const [columns, rows] = [Math.floor(width / blockPx), Math.floor(image.height / blockPx)];
  const grey = new Float64Array(columns * rows);
  for (let block = 0; block < grey.length; block++) {
    const first = (Math.floor(block / columns) * width + (block % columns)) * blockPx;
    let [red, green, blue] = [0, 0, 0];
    for (let y = 0; y < blockPx; y++) {
      const from = 4 * (first + y * width);
      for (let i = from; i < from + 4 * blockPx; i += 4) {
        red += data[i];
        green += data[i + 1];
        blue += data[i + 2];
      }
    }
    grey[block] = (0.2126 * red + 0.7152 * green + 0.0722 * blue) / blockPx ** 2;
  }
  return { columns, rows, grey };
}

/** By so many levels two blocks may differ and be alike: a line of text half a pixel lower. */
const alike = 32;

/** Share of the blocks of two pictures that don't look alike. Where they differ in size, what both have is compared. */
export function unlike(a: Blocks, b: Blocks): number {
  const [columns, rows] = [Math.min(a.columns, b.columns), Math.min(a.rows, b.rows)];
  let off = 0;
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) if (Math.abs(a.grey[y * a.columns + x] - b.grey[y * b.columns + x]) > alike) off++;
  return off / (columns * rows);
}
