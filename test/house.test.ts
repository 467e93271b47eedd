import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const src = fileURLToPath(new URL('../src/', import.meta.url));
const readme = readFileSync(`${src}README.md`, 'utf8');

const sources = (at: string): string[] =>
  readdirSync(at, { withFileTypes: true }).flatMap((e) =>
    e.isDirectory()
      ? sources(join(at, e.name))
      : /(?<!\.test|\.d)\.tsx?$/.test(e.name) && !at.endsWith('assembly')
        ? [join(at, e.name)]
        : [],
  );
const files = sources(src).map((f) => relative(src, f).replaceAll('\\', '/'));

/** What a file imports of our own, types too. */
function importsOf(file: string): string[] {
  const text = readFileSync(src + file, 'utf8');
  return [...text.matchAll(/(?:^|\n)\s*(?:import|export)\s[^;]*?from\s+'(\.[^'?]+)'/g)]
    .map((m) => normalize(join(dirname(file), m[1])).replaceAll('\\', '/'))
    .filter((f) => files.includes(f));
}
const graph = new Map(files.map((f) => [f, importsOf(f)]));

/** The floors of the picture, the lowest first; rooms on one line do not know each other. */
const floors = readme
  .split('```')[1]
  .split('\n')
  .map((line) => line.match(/[a-z]+/g) ?? [])
  .filter((rooms) => rooms.length > 0)
  .reverse();
const floorOf = new Map(floors.flatMap((rooms, i) => rooms.map((room) => [room, i] as const)));
const roomOf = (file: string): string | undefined => {
  const [first, second, ...deeper] = file.split('/');
  return first === 'core' ? (deeper.length > 0 ? second : undefined) : second === undefined ? undefined : first;
};

/** Telling needs units; the schema's descriptions are told once, for the file in docs. */
const steps: ReadonlySet<string> = new Set([
  'words/tell.ts',
  'words/index.ts',
  'words/one-language.ts',
  'core/job/schema/json-schema.ts',
  'core/job/schema/explain.ts',
]);

describe('the house is as its picture shows it', () => {
  test('every folder of the sources has a floor, and a line that says what it holds', () => {
    const rooms = new Set(files.map(roomOf).filter((r) => r !== undefined));
    expect([...rooms].filter((r) => !floorOf.has(r))).toEqual([]);
    expect([...floorOf.keys()].filter((r) => !rooms.has(r))).toEqual([]);
    for (const room of rooms) expect(readme).toMatch(new RegExp(`^\\| ${room} \\|`, 'm'));
  });

  test('imports point downward only, and words are told at the edge alone', () => {
    const wrong: string[] = [];
    for (const [file, imports] of graph) {
      const room = roomOf(file);
      for (const one of imports) {
        const from = roomOf(one);
        if (steps.has(file)) continue;
        if (room === undefined || from === undefined || room === from) continue;
        if (floorOf.get(from)! >= floorOf.get(room)!) wrong.push(`${file} → ${one}`);
        if (file.startsWith('core/') && from === 'words' && one !== 'words/say.ts') wrong.push(`${file} → ${one}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  test('rooms of core are entered through their front door', () => {
    const climbs = [...graph].flatMap(([file, imports]) =>
      imports
        .filter((one) => {
          const [room, from] = [roomOf(file), roomOf(one)];
          return from !== undefined && one.startsWith('core/') && room !== from && one !== `core/${from}/index.ts`;
        })
        .map((one) => `${file} → ${one}`),
    );
    expect(climbs).toEqual([]);
  });

  test('no file leads back to itself, by types either', () => {
    const circles: string[] = [];
    const state = new Map<string, 'open' | 'done'>();
    const path: string[] = [];
    const visit = (file: string): void => {
      state.set(file, 'open');
      path.push(file);
      for (const next of graph.get(file)!) {
        if (state.get(next) === 'open') circles.push([...path.slice(path.indexOf(next)), next].join(' → '));
        else if (!state.has(next)) visit(next);
      }
      path.pop();
      state.set(file, 'done');
    };
    for (const file of files) if (!state.has(file)) visit(file);
    expect(circles).toEqual([]);
  });

  test('no folder is a heap: where more than fifteen files lie together, each is named after a room', () => {
    const lying = new Map<string, number>();
    for (const file of files) lying.set(dirname(file), (lying.get(dirname(file)) ?? 0) + 1);
    const heaps = [...lying].filter(([folder, n]) => n > 15 && !folder.startsWith('words/'));
    expect(heaps).toEqual([]);
  });

  test('from a run’s strength to the printed page it is seven functions, and each takes what the one before gave', () => {
    const walk = [...readme.matchAll(/^\| (\w+) \| `([\w/.-]+\.ts)` \|/gm)].map(([, name, file]) => ({ name, file }));
    expect(walk.length).toBeLessThanOrEqual(7);
    /** The text of a function, to the brace that closes it. */
    const bodyOf = ({ name, file }: { name: string; file: string }): string => {
      const text = readFileSync(`${src}${file}`, 'utf8');
      const from = text.search(new RegExp(`^(?:export )?function ${name}\\(`, 'm'));
      expect(from, `${name} in ${file}`).toBeGreaterThanOrEqual(0);
      return text.slice(from, text.indexOf('\n}\n', from));
    };
    expect(bodyOf(walk[0])).toContain('.strength');
    // Called by name, or through what the Plan and the pages' setting hold.
    const handed: Readonly<Record<string, RegExp>> = {
      coloursOn: /\bfilm\b/,
      smallProof: /\bpalette\b|wordsAfter/,
      drawProof: /setting\.proof\(/,
    };
    walk.slice(1).forEach((step, i) => {
      expect(bodyOf(step), `${walk[i].name} → ${step.name}`).toMatch(handed[step.name] ?? new RegExp(`\\b${walk[i].name}\\(`));
    });
    expect(readFileSync(`${src}packet/pages/ink/setting.ts`, 'utf8')).toMatch(/proof\(paper[^]*smallProof\(plan, paper/);
    expect(readFileSync(`${src}packet/pages/ink/laydown.ts`, 'utf8')).toContain('drawProof(');
  });
});

test('the page waits for one language: it enters the words by the door that fetches it', () => {
  const heavy = [...graph].filter(([file]) => file.startsWith('workbench/') && !file.startsWith('workbench/engine/answers/'));
  expect(
    heavy.filter(([, imports]) => imports.includes('words/index.ts') || imports.includes('words/all.ts')).map(([file]) => file),
  ).toEqual([]);
});

test('what the command alone says is said by the command alone: the page fetches languages without those words', () => {
  const own = [...graph]
    .filter(([file]) => /^words\/(en|de)\/index\.ts$/.test(file))
    .flatMap(([, imports]) => imports.filter((f) => !/shown|en\/index/.test(f)));
  expect(own.length).toBeGreaterThan(4);
  expect(own.filter((f) => !/^words\/(en|de)\/cli\//.test(f))).toEqual([]);
  const rooms = /\(\s*'(?:cli|help|refusals|answers|begin|inkAnswers)\.\w+'/;
  expect(files.filter((f) => !f.startsWith('cli/') && rooms.test(readFileSync(src + f, 'utf8')))).toEqual([]);
});
