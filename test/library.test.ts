import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../', import.meta.url));
const node = (...args: string[]): string => execFileSync(process.execPath, args, { cwd: root, encoding: 'utf8' });

/** What each must say, so that an example can't quietly say nothing. */
const says: Readonly<Record<string, RegExp>> = {
  'a-stencil-that-holds.ts': /^[2-9] bridges, 0\.[3-5]\d m to cut, holds: /,
  'foresee-a-job.ts': /the darkest overlap is .*, within ΔE00 [\d.]+/,
  'how-many-sheets.ts': /^start (2[6-9]|3\d) sheets\n.+\n.+/,
  'one-ink-over-another.ts': /blue at 100 % over yellow: Lab \d+ -\d+ \d+/,
  'the-gap.ts': /gap 2\.5 mm.*\n2\.5 mm: the image grows by 0\.\d\d mm/,
};

describe('the library as others use it', () => {
  test('every example of the docs runs, imported as a package would be', () => {
    const files = readdirSync(`${root}docs/examples`);
    expect(files.sort()).toEqual(Object.keys(says));
    for (const file of files) expect(node('--import', 'tsx', `docs/examples/${file}`), file).toMatch(says[file]);
  }, 120_000);

  test('every door of the package leads somewhere, in plain Node', () => {
    const doors = Object.keys(JSON.parse(node('-p', 'JSON.stringify(require("./package.json").exports)')) as object).filter(
      (d) => !d.endsWith('.json'),
    );
    const script = doors
      .map((d) => `if (Object.keys(await import('laydown${d.slice(1)}')).length === 0) throw new Error('${d}')`)
      .join(';');
    expect(node('--input-type=module', '-e', `${script}; console.log('all')`)).toBe('all\n');
  }, 60_000);
});
