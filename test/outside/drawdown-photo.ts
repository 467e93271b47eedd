import { createCanvas } from '@napi-rs/canvas';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { readFonts } from '../../src/cli/assets.ts';
import { srgbFromXyz, xyzFromLab, type Lab } from '../../src/core/colour/index.ts';
import { drawdownSheet, type DrawdownSheet } from '../../src/core/ink/index.ts';
import { makeDrawdownSheets } from '../../src/packet/index.ts';

/** sRGB's curve, IEC 61966-2-1, written anew here. */
const linear = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
const encoded = (v: number): number => (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);

/** Every value of a pixel in light, and of light in so many steps as a pixel: millions are asked for. */
const inLight = Float64Array.from({ length: 256 }, (_, v) => linear(v / 255));
const steps = 0xffff;
const asPixel = Uint8Array.from({ length: steps + 1 }, (_, v) => Math.round(255 * encoded(v / steps)));

export interface Drawn {
  /** As printed, rendered by another program's PDF reader. */
  readonly sheet: DrawdownSheet;
  readonly jpeg: Uint8Array;
}

/**
 * The sheet as it comes out of the printer (drawn by pdf.js, not by this project), with ink drawn down on it, laid askew
 * on a table and photographed under light that falls off to one side.
 */
export async function photographOfSheet(
  title: string,
  shares: readonly number[],
  paper: Lab,
  inkOver: (share: number, over: 'white' | 'black') => Lab | null,
): Promise<Drawn> {
  const sheet = drawdownSheet(title, shares);
  const pdf = await getDocument({ data: (await makeDrawdownSheets([title], readFonts(), shares)).slice(), verbosity: 0 }).promise;
  const page = await pdf.getPage(1);
  const perMm = 5;
  const viewport = page.getViewport({ scale: (perMm * 25.4) / 72 });
  const [w, h] = [Math.round(sheet.widthMm * perMm), Math.round(sheet.heightMm * perMm)];
  const canvas = createCanvas(w, h);
  const context = canvas.getContext('2d');
  await page.render({ canvasContext: context as unknown as CanvasRenderingContext2D, canvas: null, viewport }).promise;
  context.globalCompositeOperation = 'multiply';
  context.fillStyle = hex(paper);
  context.fillRect(0, 0, w, h);
  context.globalCompositeOperation = 'source-over';
  const { blackBar: bar } = sheet;
  for (const strip of sheet.strips) {
    for (const over of ['white', 'black'] as const) {
      const lab = inkOver(strip.share, over);
      if (!lab) continue;
      const from = over === 'white' ? strip.xMm : bar.xMm,
        to = over === 'white' ? bar.xMm : strip.xMm + strip.widthMm;
      context.fillStyle = hex(lab);
      context.fillRect(from * perMm, strip.yMm * perMm, (to - from) * perMm, strip.heightMm * perMm);
    }
  }
  const table = createCanvas(1500, 1900);
  const photo = table.getContext('2d');
  photo.fillStyle = '#6a665f';
  photo.fillRect(0, 0, 1500, 1900);
  photo.translate(760, 950);
  photo.rotate(0.05);
  photo.transform(1, 0.03, -0.02, 1, 0, 0);
  photo.imageSmoothingQuality = 'high';
  photo.drawImage(canvas, -w / 2, -h / 2);
  photo.resetTransform();
  const image = photo.getImageData(0, 0, 1500, 1900);
  for (let y = 0; y < 1900; y++)
    for (let x = 0; x < 1500; x++) {
      const light = 0.92 - 0.22 * (x / 1500) - 0.1 * (y / 1900);
      for (let c = 0; c < 3; c++) {
        const at = (y * 1500 + x) * 4 + c;
        image.data[at] = asPixel[Math.round(steps * inLight[image.data[at]] * light)];
      }
    }
  photo.putImageData(image, 0, 0);
  return { sheet, jpeg: new Uint8Array(table.toBuffer('image/jpeg', 95)) };
}

function hex(lab: Lab): string {
  return srgbFromXyz(xyzFromLab(lab)).hex;
}
