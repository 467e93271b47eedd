import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';

/** A file of the Workbench as it is handed out. */
export interface WebFile {
  readonly bytes: Uint8Array;
  readonly type: string;
  readonly etag: string;
}

const types: Readonly<Record<string, string | undefined>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.wasm': 'application/wasm',
  '.bin': 'application/octet-stream',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
};

export function webFile(bytes: Uint8Array, type: string): WebFile {
  return { bytes, type, etag: `"${createHash('sha256').update(bytes).digest('hex').slice(0, 32)}"` };
}

/**
 * All files of the built page, by their path in the address. They are read once and kept: some megabytes, and neither a new build under its feet nor
 * a disk that fails can then end the server, or mix two editions.
 */
export function readWebFiles(folder: string): ReadonlyMap<string, WebFile> {
  const files = new Map<string, WebFile>();
  const walk = (below: string): void => {
    for (const entry of readdirSync(join(folder, below), { withFileTypes: true })) {
      const path = `${below}/${entry.name}`;
      if (entry.isDirectory()) walk(path);
      else if (entry.isFile())
        files.set(
          path,
          webFile(new Uint8Array(readFileSync(join(folder, path))), types[extname(entry.name)] ?? 'application/octet-stream'),
        );
    }
  };
  walk('');
  const index = files.get('/index.html');
  if (index) files.set('/', index);
  return files;
}
