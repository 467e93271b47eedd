import { wideSpace, type Photograph } from '../../../core/ink/index.ts';
import { fail } from '../../../core/problem.ts';

const mostPixels = 80_000_000;

/**
 * A photograph through the browser's own decoders: turned upright, its colour profile honoured, in the wide space that
 * telephones use.
 */
export async function photographOf(bytes: Uint8Array, name: string): Promise<Photograph> {
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(new Blob([bytes as BlobPart]));
  } catch {
    return fail('photo-not-read', name, 'This browser cannot read the picture.', 'Save it as JPEG or PNG and choose it again.');
  }
  try {
    const { width, height } = bitmap;
    if (width * height > mostPixels)
      fail(
        'photo-too-large',
        name,
        `The picture has ${Math.round((width * height) / 1e6)} megapixels.`,
        'Save it smaller; 12 megapixels are plenty.',
      );
    const context = new OffscreenCanvas(width, height).getContext('2d', { colorSpace: 'display-p3', willReadFrequently: true });
    if (!context) return fail('photo-not-read', name, 'This browser has no room for the picture.', 'Save it smaller and choose it again.');
    context.drawImage(bitmap, 0, 0);
    return { width, height, data: context.getImageData(0, 0, width, height, { colorSpace: 'display-p3' }).data, space: wideSpace };
  } finally {
    bitmap.close();
  }
}
