import { randomBytes, randomInt, timingSafeEqual } from 'node:crypto';
import { addLogLines, readLog } from '../../core/edition/index.ts';

/** Neither 0 and O nor 1, I and L: it is read from a screen and typed. Eight of them are 10¹¹ to guess, five tries a minute. */
const letters = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
const codeLength = 8;
const mostWrong = 5;
const closedMs = 60_000;
const mostDevices = 8;
const mostPrints = 50;
const mostBytes = 5_000_000;
const longestLine = 2000;

/** What the desk's page says each time, and what it hears. */
export interface DeskSays {
  /** Tells this print's count from every other. */
  readonly print: string;
  /** What a device at the press is shown, as text that only the two pages read; null: as before. */
  readonly view: string | null;
  readonly lines: readonly string[];
}
export interface DeskHears {
  readonly lines: readonly string[];
  readonly devices: number;
}
export interface AwayHears {
  readonly view: string | null;
  /** Which view that is; asked with the newest, none comes. */
  readonly mark: number;
  readonly print: string;
  /** Of that print. */
  readonly lines: readonly string[];
}
/** Lines counted of one print. */
export interface Counts {
  readonly print: string;
  readonly lines: readonly string[];
}

/**
 * The count of one session between the desk and devices that were let in with a code: what runs are called and which sheets they have, read; counted
 * lines, added to. Nothing else is here, nothing is written to disk, and what one side lacks the other still has.
 */
export interface Sharing {
  readonly code: string;
  /** @returns a token for this device; null: wrong, spent, or too many tries. A code lets one device in, and another one follows. */
  enter(code: string): string | null;
  desk(says: DeskSays): DeskHears;
  /** null: no such token. */
  away(token: string, mark: number, counts: readonly Counts[]): AwayHears | null;
}

export function createSharing(onCode: (code: string) => void = () => undefined, clock: () => number = Date.now): Sharing {
  let code = newCode();
  let wrong = 0;
  let closedUntil = 0;
  const tokens = new Set<string>();
  let view: string | null = null;
  let mark = 0;
  const logs = new Map<string, string>();
  let print = '';

  const renew = (): void => {
    code = newCode();
    wrong = 0;
    onCode(code);
  };
  const add = (to: string, lines: readonly string[]): void => {
    const log = logs.get(to) ?? '';
    const whole = lines.filter((line) => line.length <= longestLine && !line.includes('\n') && readLog(line).events.length === 1);
    if (log.length < mostBytes) logs.set(to, addLogLines(log, whole));
  };
  const all = (): string[] => (logs.get(print) ?? '').split('\n').filter((line) => line !== '');

  return {
    get code() {
      return code;
    },
    enter(tried) {
      if (clock() < closedUntil || tokens.size >= mostDevices) return null;
      if (!isSame(tried.toUpperCase(), code)) {
        if (++wrong >= mostWrong) {
          closedUntil = clock() + closedMs;
          renew();
        }
        return null;
      }
      const token = randomBytes(32).toString('hex');
      tokens.add(token);
      renew();
      return token;
    },
    desk(says) {
      if (!logs.has(says.print) && logs.size >= mostPrints) return { lines: [], devices: tokens.size };
      print = says.print;
      if (says.view !== null && says.view !== view) {
        view = says.view;
        mark++;
      }
      add(print, says.lines);
      return { lines: all(), devices: tokens.size };
    },
    away(token, seen, counts) {
      if (!tokens.has(token)) return null;
      // Only of prints that the desk has shown.
      for (const { print: of, lines } of counts) if (logs.has(of)) add(of, lines);
      return { view: seen === mark ? null : view, mark, print, lines: all() };
    },
  };
}

function newCode(): string {
  return Array.from({ length: codeLength }, () => letters[randomInt(letters.length)]).join('');
}

function isSame(one: string, other: string): boolean {
  const [a, b] = [Buffer.from(one), Buffer.from(other)];
  return a.length === b.length && timingSafeEqual(a, b);
}
