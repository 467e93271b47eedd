import { createCanvas, loadImage } from '@napi-rs/canvas';

/** A block of a picture, px: letters are drawn a little differently by every engine, blocks of them are not. */
const blockPx = 16;

/** Mean grey of every block, 0..255. */
async function blocksOf(png: Uint8Array): Promise<{ readonly columns: number; readonly rows: number; readonly grey: Float64Array }> {
  const image = await loadImage(Buffer.from(png));
  const canvas = createCanvas(image.width, image.height);
  const context = canvas.getContext('2d');
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, image.width, image.height);
  const [columns, rows] = [Math.floor(image.width / blockPx), Math.floor(image.height / blockPx)];
  const grey = new Float64Array(columns * rows);
  for (let y = 0; y < rows * blockPx; y++)
    for (let x = 0; x < columns * blockPx; x++) {
      const i = 4 * (y * image.width + x);
      grey[Math.floor(y / blockPx) * columns + Math.floor(x / blockPx)] +=
        (0.2126 * data[i] + 0.7152 * data[i + 1] + 0.0722 * data[i + 2]) / blockPx ** 2;
    }
  return { columns, rows, grey };
}

/** By so many levels two blocks may differ and be alike: a line of text half a pixel lower. */
const alike = 32;

/** Share of the blocks of two pictures that don't look alike. Where they differ in size, what both have is compared. */
export async function unlike(one: Uint8Array, other: Uint8Array): Promise<number> {
  const [a, b] = await Promise.all([blocksOf(one), blocksOf(other)]);
  const [columns, rows] = [Math.min(a.columns, b.columns), Math.min(a.rows, b.rows)];
  let off = 0;
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) if (Math.abs(a.grey[y * a.columns + x] - b.grey[y * b.columns + x]) > alike) off++;
  return off / (columns * rows);
}
