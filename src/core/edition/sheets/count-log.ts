import { faultOf, readFault, type Fault } from './faults.ts';

/**
 * The count at the press: one line an event, only ever added to. Each line carries its number and a check sum, so that a
 * log cut off at any byte (a killed browser, an empty battery) loses at most the one line that was being written.
 */
export type CountEvent =
  | { readonly kind: 'pull'; readonly run: string; readonly sheet: string; readonly at: string }
  | ({ readonly kind: 'spoil'; readonly run: string; readonly sheet: string; readonly at: string } & Fault)
  /** Of a sheet that was spoiled in this run a usual fault tells why. */
  | ({ readonly kind: 'note'; readonly run: string; readonly sheet: string; readonly at: string } & Fault)
  /** Takes back one event: the number `of`, or the last that still stands. */
  | { readonly kind: 'undo'; readonly run: string; readonly sheet: string; readonly at: string; readonly of?: number };

export interface Counted {
  readonly number: number;
  readonly event: CountEvent;
}

export interface ReadLog {
  readonly events: readonly Counted[];
  /** Lines that could not be read: half-written or damaged. */
  readonly damaged: number;
  /** What to write before the next line: a line break when the last one was cut off. */
  readonly joint: '' | '\n';
  readonly nextNumber: number;
}

/** One line for the log, with its line break. Write `joint` of the log before the first line after reading. */
export function logLine(number: number, event: CountEvent): string {
  const body = JSON.stringify([number, event]);
  return `${checkSum(body)} ${body}\n`;
}

/** A log with lines added that it doesn't hold yet: two devices that counted apart come together without losing one. */
export function addLogLines(log: string, lines: readonly string[]): string {
  const there = new Set(log.split('\n'));
  const missing = lines.filter((line) => !there.has(line));
  return missing.length === 0 ? log : `${log}${readLog(log).joint}${missing.join('\n')}\n`;
}

/** Reads whatever is left of a log. Never throws. A line met twice (a retried write) counts once. */
export function readLog(text: string): ReadLog {
  // Told apart by the whole line, not by the number: two windows may both have written a number 7, and both count.
  const lines = new Set(text.split('\n').filter((line) => line !== ''));
  const read = [...lines].map(readLine);
  const events = read.filter((counted) => counted !== undefined).sort((one, other) => one.number - other.number);
  const damaged = read.length - events.length;
  return { events, damaged, joint: text === '' || text.endsWith('\n') ? '' : '\n', nextNumber: (events.at(-1)?.number ?? 0) + 1 };
}

function readLine(line: string): Counted | undefined {
  const body = line.slice(9);
  if (line[8] !== ' ' || line.slice(0, 8) !== checkSum(body)) return undefined;
  try {
    const parsed: unknown = JSON.parse(body);
    if (!Array.isArray(parsed) || !Number.isSafeInteger(parsed[0])) return undefined;
    const event = eventOf(parsed[1]);
    return event && { number: parsed[0] as number, event };
  } catch {
    return undefined;
  }
}

function eventOf(value: unknown): CountEvent | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const { kind, run, sheet, at, of, ...said } = value as Record<string, unknown>;
  if (typeof run !== 'string' || typeof sheet !== 'string' || typeof at !== 'string') return undefined;
  const event = { run, sheet, at };
  const fault = readFault(said);
  if (kind === 'pull') return { kind, ...event };
  if (kind === 'spoil') return { kind, ...event, ...fault };
  if (kind === 'note') return fault.fault === undefined && fault.text === undefined ? undefined : { kind, ...event, ...fault };
  if (kind !== 'undo') return undefined;
  if (of === undefined) return { kind, ...event };
  return Number.isSafeInteger(of) ? { kind, ...event, of: of as number } : undefined;
}

/** FNV-1a over UTF-16 units, 32 bits, eight hex digits: enough to tell a cut-off line from a whole one. */
function checkSum(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}

export interface RunCount {
  readonly run: string;
  /** Strokes; a second stroke on the same sheet counts again. */
  readonly pulls: number;
  /** Sheets that went through, in the order they did. */
  readonly sheets: readonly string[];
  readonly spoiled: readonly string[];
}

export interface SaidOfSheet extends Fault {
  readonly run: string;
  readonly at: string;
}

export interface SheetCount {
  readonly sheet: string;
  readonly runs: readonly string[];
  readonly faults: readonly SaidOfSheet[];
  readonly notes: readonly SaidOfSheet[];
  readonly spoiled: boolean;
}

export interface CountState {
  readonly runs: readonly RunCount[];
  readonly sheets: readonly SheetCount[];
  /** Events that still stand. */
  readonly standing: readonly Counted[];
  /** The one a plain undo would take back. */
  readonly last: Counted | null;
}

/** What the events add up to. An undo can't be undone; pull again instead. */
export function foldLog(events: readonly Counted[]): CountState {
  const standing: Counted[] = [];
  for (const counted of events) {
    if (counted.event.kind !== 'undo') {
      standing.push(counted);
      continue;
    }
    const of = counted.event.of;
    // Two devices that counted apart may both have a number 7: the sheet tells which is meant.
    const isMeant = (one: Counted): boolean =>
      one.number === of && one.event.sheet === counted.event.sheet && one.event.run === counted.event.run;
    const index = of === undefined ? standing.length - 1 : standing.findIndex(isMeant);
    if (index >= 0) standing.splice(index, 1);
  }
  const runs = new Map<string, { pulls: number; sheets: string[]; spoiled: string[] }>();
  const sheets = new Map<string, { runs: string[]; faults: SaidOfSheet[]; notes: SaidOfSheet[]; spoiled: boolean }>();
  for (const { event } of standing) {
    const run = runs.get(event.run) ?? { pulls: 0, sheets: [], spoiled: [] };
    const sheet = sheets.get(event.sheet) ?? { runs: [], faults: [], notes: [], spoiled: false };
    runs.set(event.run, run);
    sheets.set(event.sheet, sheet);
    if (event.kind === 'pull') {
      run.pulls++;
      if (!run.sheets.includes(event.sheet)) run.sheets.push(event.sheet);
      if (!sheet.runs.includes(event.run)) sheet.runs.push(event.run);
    } else if (event.kind === 'spoil') {
      if (!run.spoiled.includes(event.sheet)) run.spoiled.push(event.sheet);
      sheet.spoiled = true;
      sheet.faults.push(saidBy(event));
    } else if (event.kind === 'note') {
      const unsaid = sheet.faults.findLastIndex((one) => one.run === event.run && one.fault === undefined && one.text === undefined);
      if (event.fault !== undefined && unsaid >= 0) sheet.faults[unsaid] = saidBy(event);
      else sheet.notes.push(saidBy(event));
    }
  }
  return {
    runs: [...runs].map(([run, count]) => ({ run, ...count })),
    sheets: [...sheets].map(([sheet, count]) => ({ sheet, ...count })),
    standing,
    last: standing.at(-1) ?? null,
  };
}

function saidBy(event: SaidOfSheet): SaidOfSheet {
  return { run: event.run, at: event.at, ...faultOf(event) };
}
