import { wideSpace, type Photograph } from '../../../../core/ink/index.ts';
import { fail } from '../../../../core/problem.ts';
import { name as asName, say } from '../../../../words/one-language.ts';

const mostPixels = 80_000_000;

/**
 * A photograph through the browser's own decoders: turned upright, its colour profile honoured, in the wide space that
 * telephones use.
 */
export async function photographOf(bytes: Uint8Array, name: string): Promise<Photograph> {
  const place = say('where.file', { file: asName(name) });
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(new Blob([bytes as BlobPart]));
  } catch {
    return fail('photo-not-read', place, say('engine.pictureUnread'), say('engine.saveAsPicture'));
  }
  try {
    const { width, height } = bitmap;
    if (width * height > mostPixels)
      fail(
        'photo-too-large',
        place,
        say('engine.pictureTooLarge', { megapixels: Math.round((width * height) / 1e6) }),
        say('engine.saveSmaller'),
      );
    const context = new OffscreenCanvas(width, height).getContext('2d', { colorSpace: 'display-p3', willReadFrequently: true });
    if (!context) return fail('photo-not-read', place, say('engine.noRoom'), say('engine.saveSmallerAgain'));
    context.drawImage(bitmap, 0, 0);
    return { width, height, data: context.getImageData(0, 0, width, height, { colorSpace: 'display-p3' }).data, space: wideSpace };
  } finally {
    bitmap.close();
  }
}
