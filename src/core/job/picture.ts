import { fileStem } from './file/file-names.ts';
import type { JobPicture } from './schema/schema.ts';

/** A picture newly taken in hand: the name it goes by, a file of its own among those of the job, and what is usually asked of one. */
export function newPicture(fileName: string, taken: ReadonlyMap<string, unknown>): JobPicture {
  const name = fileName.replace(/\.[^.]*$/, '').slice(0, 200) || fileName.slice(0, 200);
  return {
    file: freshPath(name, /\.([a-z0-9]{1,5})$/i.exec(fileName)?.[1].toLowerCase() ?? 'img', taken),
    name,
    important: [],
    layers: 4,
    wishes: [],
    over: false,
    way: 'near',
    key: false,
    cutPairs: false,
    knife: {},
    reach: 'nearest',
    veil: 1,
    mostInPot: 2,
    effort: 1,
  };
}

function freshPath(name: string, ending: string, taken: ReadonlyMap<string, unknown>): string {
  for (let n = 1; ; n++) {
    const path = `pictures/${fileStem(name)}${n === 1 ? '' : `-${n}`}.${ending}`;
    if (!taken.has(path)) return path;
  }
}
