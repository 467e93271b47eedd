import { readPicture, type Picture } from '../src/core/separate/index.ts';
import { testPicture } from './separate-tools.ts';

/** Open pictures; where each comes from: `test/pictures/SOURCES.md`. */
export const openPictures: readonly { readonly name: string; readonly file: string; readonly what: string }[] = [
  {
    name: 'flower',
    file: 'flower.jpg',
    what: 'photograph, about 1928',
  },
  {
    name: 'boats',
    file: 'boats.jpg',
    what: 'photograph, about 1870',
  },
  {
    name: 'mountains',
    file: 'mountains.jpg',
    what: 'photograph, about 1900',
  },
  {
    name: 'sheep',
    file: 'sheep.jpg',
    what: 'photograph, 1890s',
  },
  { name: 'earth', file: 'earth.jpg', what: 'satellite photograph in colour' },
  { name: 'panda', file: 'panda.png', what: 'drawing in colour' },
  { name: 'fish', file: 'fish.webp', what: 'drawing in colour' },
  { name: 'parrot', file: 'parrot.webp', what: 'drawing in colour' },
];

export async function openPicture(name: string): Promise<Picture> {
  const { file } = openPictures.find((p) => p.name === name)!;
  return readPicture(await testPicture(file), file);
}
