import { readFileSync } from 'node:fs';

const folder = new URL('../../src/workbench/stations/', import.meta.url);
const index = readFileSync(new URL('index.ts', folder), 'utf8');

/** Addresses of all stations, in the order of the work, as stations/index.ts lists them: a new one is tested without being told of. */
export const stations: readonly string[] = [...index.slice(index.indexOf('Station[] = [')).matchAll(/^ {2}(\w+),$/gm)].map(([, name]) => {
  const [, path] = new RegExp(`import \\{ ${name} \\} from '\\./([^']+)'`).exec(index)!;
  return /\bid: '([\w-]+)'/.exec(readFileSync(new URL(path, folder), 'utf8'))![1];
});
