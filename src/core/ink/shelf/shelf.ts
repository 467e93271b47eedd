import type { Spectrum } from '../../colour/index.ts';
import { fail, problem, ProblemError, type Problem } from '../../problem.ts';
import { clearInk, inkOverOneGround, inkOverTwoGrounds } from '../from-drawdown.ts';
import { inkFromLadder } from '../ladder.ts';
import { spectrumFromReading } from '../reading.ts';
import type { InkFound, Reading, Surface } from '../types.ts';
import { currentShelfVersion, ShelfSchema, type InkShelf, type ShelfInk, type ShelfLot } from './schema.ts';

const mostBytes = 64 * 1024 * 1024;

export function emptyShelf(studio = ''): InkShelf {
  return { kind: 'laydown-ink-shelf', schemaVersion: currentShelfVersion, studio, inks: [], papers: [], pots: [] };
}

/**
 * Reads a shelf from its file.
 * @throws ProblemError with every fault and its place, when it is no shelf or of a newer version
 */
export function readShelf(text: string, fileName = 'ink shelf'): InkShelf {
  if (text.length > mostBytes)
    fail('file-too-large', fileName, 'The file is too large for an ink shelf.', 'Check that it is the right file.');
  let raw: unknown;
  try {
    raw = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return fail('shelf-broken', fileName, 'The file is cut short or no ink shelf.', 'Take an earlier copy; this one was left as it is.');
  }
  const version = raw !== null && typeof raw === 'object' && 'schemaVersion' in raw ? raw.schemaVersion : undefined;
  if (typeof version === 'number' && version > currentShelfVersion) {
    fail(
      'shelf-newer',
      fileName,
      `The shelf was written by a newer Laydown (version ${version}; this one reads ${currentShelfVersion}).`,
      'Update Laydown; the file was left as it is.',
    );
  }
  const parsed = ShelfSchema.safeParse(raw);
  if (!parsed.success) {
    throw new ProblemError(
      parsed.error.issues
        .slice(0, 100)
        .map((issue) =>
          problem(
            'error',
            'shelf-field',
            placeOf(fileName, issue.path),
            `${issue.message}.`,
            'Correct this field, or take an earlier copy.',
          ),
        ),
    );
  }
  const problems = shelfProblems(parsed.data, fileName);
  if (problems.length > 0) throw new ProblemError(problems);
  return parsed.data;
}

export function writeShelf(shelf: InkShelf): string {
  return `${JSON.stringify(shelf, null, 1)}\n`;
}

function placeOf(fileName: string, path: readonly PropertyKey[]): string {
  return path.reduce<string>((place, key) => (typeof key === 'number' ? `${place}[${key}]` : `${place} ${String(key)}`), `${fileName}:`);
}

function shelfProblems(shelf: InkShelf, fileName: string): Problem[] {
  const out: Problem[] = [];
  const ids = new Set<string>();
  for (const [kind, things] of [
    ['inks', shelf.inks],
    ['papers', shelf.papers],
    ['pots', shelf.pots],
  ] as const) {
    const seen = new Set<string>();
    things.forEach((thing, i) => {
      if (seen.has(thing.id))
        out.push(problem('error', 'shelf-twice', `${fileName}: ${kind}[${i}]`, `${thing.id} stands there twice.`, 'Rename one of them.'));
      seen.add(thing.id);
    });
    if (kind === 'inks') for (const id of seen) ids.add(id);
  }
  shelf.pots.forEach((pot, i) => {
    for (const part of [...pot.parts, ...pot.rounds.flatMap((r) => r.added)]) {
      if (!ids.has(part.ink))
        out.push(
          problem(
            'error',
            'shelf-unknown-ink',
            `${fileName}: pots[${i}]`,
            `The pot ${pot.name} holds ${part.ink}, which is not on the shelf.`,
            'Add the ink, or take it out of the record.',
          ),
        );
    }
  });
  return out;
}

/**
 * Puts two shelves together: inks, papers and pots of the same id and name are one, their lots and rounds joined;
 * the same id for something else gets a new id, and that is told.
 */
export function mergeShelves(mine: InkShelf, other: InkShelf): { readonly shelf: InkShelf; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const renamed = new Map<string, string>();
  const inks = [...mine.inks];
  const free = (id: string, taken: readonly { readonly id: string }[]): string => {
    for (let n = 2; ; n++) {
      const tried = `${id.slice(0, 58)}-${n}`;
      if (!taken.some((t) => t.id === tried)) return tried;
    }
  };
  const told = (id: string, now: string): void => {
    problems.push(
      problem(
        'note',
        'shelf-renamed',
        `ink shelf: ${id}`,
        `Both shelves have a ${id}, and they are different things; the added one is now ${now}.`,
        'Join them by hand if they are the same.',
      ),
    );
  };
  for (const ink of other.inks) {
    const at = inks.findIndex((i) => i.id === ink.id);
    if (at < 0) inks.push(ink);
    else if (inks[at].name === ink.name && inks[at].role === ink.role) inks[at] = joinLots(inks[at], ink);
    else {
      const now = free(ink.id, [...inks, ...other.inks]);
      renamed.set(ink.id, now);
      inks.push({ ...ink, id: now });
      told(ink.id, now);
    }
  }
  const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
  const join = <T extends { readonly id: string }>(here: readonly T[], there: readonly T[]): T[] => {
    const out = [...here];
    for (const thing of there) {
      const found = out.find((t) => t.id === thing.id);
      if (!found) out.push(thing);
      else if (!same(found, thing)) {
        const now = free(thing.id, [...out, ...there]);
        out.push({ ...thing, id: now });
        told(thing.id, now);
      }
    }
    return out;
  };
  const withNewIds = other.pots.map((pot) => {
    const part = <P extends { ink: string }>(p: P): P => ({ ...p, ink: renamed.get(p.ink) ?? p.ink });
    return { ...pot, parts: pot.parts.map(part), rounds: pot.rounds.map((r) => ({ ...r, added: r.added.map(part) })) };
  });
  return { shelf: { ...mine, inks, papers: join(mine.papers, other.papers), pots: join(mine.pots, withNewIds) }, problems };
}

function joinLots(mine: ShelfInk, other: ShelfInk): ShelfInk {
  const known = new Set(mine.lots.map((l) => l.lot));
  return { ...mine, lots: [...mine.lots, ...other.lots.filter((l) => !known.has(l.lot))] };
}

/** The ink of one lot from its drawdowns, under a surface. */
export function inkOfLot(lot: ShelfLot, surface: Surface, place: string): InkFound {
  const { source } = lot;
  const spectrum = (reading: Reading, where: string): Spectrum => spectrumFromReading(reading, `${place}.${where}`);
  switch (source.from) {
    case 'clear':
      return {
        ink: clearInk(),
        trust: { how: 'clear', level: 'good', words: 'Clear base: nothing is absorbed or scattered.' },
        problems: [],
      };
    case 'one-ground':
      return inkOverOneGround({ ink: spectrum(source.over, 'over'), ground: spectrum(source.ground, 'ground'), surface });
    case 'two-grounds':
      return inkOverTwoGrounds({
        overWhite: spectrum(source.overWhite, 'overWhite'),
        white: spectrum(source.white, 'white'),
        overBlack: spectrum(source.overBlack, 'overBlack'),
        black: spectrum(source.black, 'black'),
        surface,
      });
    case 'ladder':
      return inkFromLadder({
        ground: spectrum(source.ground, 'ground'),
        steps: source.steps.map((s, i) => ({ share: s.share, over: spectrum(s.over, `steps[${i}]`) })),
        surface,
      });
  }
}

/** The lot in use: the last one. */
export function lotInUse(ink: ShelfInk): ShelfLot {
  return ink.lots[ink.lots.length - 1];
}
