import type { Spectrum } from '../../colour/index.ts';
import { fail, problem, ProblemError, type Problem } from '../../problem.ts';
import { name as asName, say, type Saying } from '../../../words/say.ts';
import { clearInk, inkOverOneGround, inkOverTwoGrounds } from '../reading/from-drawdown.ts';
import { inkFromLadder } from '../reading/ladder.ts';
import { spectrumFromReading } from '../reading/reading.ts';
import type { InkFound, Reading, Surface } from '../types.ts';
import { fieldProblem, placeInFile } from './faults.ts';
import { currentShelfVersion, ShelfSchema, type InkShelf, type ShelfInk, type ShelfLot } from './schema.ts';

const mostBytes = 64 * 1024 * 1024;
const mostFaults = 100;

export function emptyShelf(studio = ''): InkShelf {
  return { kind: 'laydown-ink-shelf', schemaVersion: currentShelfVersion, studio, inks: [], papers: [], pots: [] };
}

/**
 * Reads a shelf from its file.
 * @throws ProblemError with every fault and its place, when it is no shelf or of a newer version
 */
export function readShelf(text: string, fileName?: string): InkShelf {
  const file = fileName === undefined ? say('where.inkShelf') : say('where.file', { file: asName(fileName) });
  if (text.length > mostBytes) fail('file-too-large', file, say('recipes.shelfTooLarge'), say('recipes.checkFile'));
  let raw: unknown;
  try {
    raw = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return fail('shelf-broken', file, say('recipes.shelfBroken'), say('recipes.takeEarlierCopy'));
  }
  const version = raw !== null && typeof raw === 'object' && 'schemaVersion' in raw ? raw.schemaVersion : undefined;
  if (typeof version === 'number' && version > currentShelfVersion) {
    fail('shelf-newer', file, say('recipes.shelfNewer', { version, ours: currentShelfVersion }), say('recipes.updateLaydown'));
  }
  const parsed = ShelfSchema.safeParse(raw);
  if (!parsed.success) {
    throw new ProblemError(parsed.error.issues.slice(0, mostFaults).map((issue) => fieldProblem(issue, raw, file)));
  }
  const problems = shelfProblems(parsed.data, file);
  if (problems.length > 0) throw new ProblemError(problems);
  return parsed.data;
}

export function writeShelf(shelf: InkShelf): string {
  return `${JSON.stringify(shelf, null, 1)}\n`;
}

function shelfProblems(shelf: InkShelf, file: Saying): Problem[] {
  const out: Problem[] = [];
  const ids = new Set<string>();
  for (const [kind, things] of [
    ['inks', shelf.inks],
    ['papers', shelf.papers],
    ['pots', shelf.pots],
  ] as const) {
    const seen = new Set<string>();
    things.forEach((thing, i) => {
      if (seen.has(thing.id)) {
        const message = say('recipes.twice', { id: asName(thing.id) });
        out.push(problem('error', 'shelf-twice', placeInFile(shelf, file, [kind, i]), message, say('recipes.renameOne')));
      }
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
            placeInFile(shelf, file, ['pots', i]),
            say('recipes.potHoldsUnknown', { pot: asName(pot.name), ink: asName(part.ink) }),
            say('recipes.addOrTakeOut'),
          ),
        );
    }
  });
  return out;
}

/**
 * Puts two shelves together: inks, papers and pots of the same id and name are one, their lots and rounds joined;
 * the same id for something else gets a new id, which a note says.
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
  const noteRenamed = (id: string, now: string): void => {
    problems.push(
      problem(
        'note',
        'shelf-renamed',
        say('recipes.theShelf', { id: asName(id) }),
        say('recipes.renamed', { id: asName(id), now: asName(now) }),
        say('recipes.joinByHand'),
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
      noteRenamed(ink.id, now);
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
        noteRenamed(thing.id, now);
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
export function inkOfLot(lot: ShelfLot, surface: Surface, inkName: string): InkFound {
  const at = (which: Saying): Saying => say('recipes.lotReading', { ink: asName(inkName), lot: asName(lot.lot), reading: which });
  const found = inkOfSource(lot.source, surface, at);
  const reading = new Map([
    ['over', say('recipes.inkOnGround')],
    ['white', say('recipes.bareWhite')],
    ['overWhite', say('recipes.inkOnWhite')],
    ...(lot.source.from === 'ladder' ? lot.source.steps.map((_, i) => [`steps[${i}]`, say('recipes.stepNo', { n: i + 1 })] as const) : []),
  ]);
  return {
    ...found,
    problems: found.problems.map((p) => problem(p.severity, p.code, at(reading.get(p.path) ?? say('where.reading')), p.message, p.advice)),
  };
}

function inkOfSource(source: ShelfLot['source'], surface: Surface, at: (which: Saying) => Saying): InkFound {
  const spectrum = (reading: Reading, which: Saying): Spectrum => spectrumFromReading(reading, at(which));
  switch (source.from) {
    case 'clear':
      return {
        ink: clearInk(),
        trust: { how: 'clear', level: 'good', words: say('recipes.clearBase') },
        problems: [],
      };
    case 'one-ground':
      return inkOverOneGround({
        ink: spectrum(source.over, say('recipes.inkOnGround')),
        ground: spectrum(source.ground, say('recipes.bareGround')),
        surface,
      });
    case 'two-grounds':
      return inkOverTwoGrounds({
        overWhite: spectrum(source.overWhite, say('recipes.inkOnWhite')),
        white: spectrum(source.white, say('recipes.bareWhite')),
        overBlack: spectrum(source.overBlack, say('recipes.inkOnBlack')),
        black: spectrum(source.black, say('recipes.bareBlack')),
        surface,
      });
    case 'ladder':
      return inkFromLadder({
        ground: spectrum(source.ground, say('recipes.bareGround')),
        steps: source.steps.map((s, i) => ({ share: s.share, over: spectrum(s.over, say('recipes.stepNo', { n: i + 1 })) })),
        surface,
      });
  }
}

/** The lot in use: the last one. */
export function lotInUse(ink: ShelfInk): ShelfLot {
  return ink.lots[ink.lots.length - 1];
}
