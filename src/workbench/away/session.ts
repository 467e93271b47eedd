import { computed, signal } from '@preact/signals';
import { addLogLines, foldLog, logLine, readLog, type CountEvent } from '../../core/edition/index.ts';
import type { AwayView } from './view.ts';

/** The storage of a browser, or what stands in for it in a test. */
export type Room = Pick<Storage, 'getItem' | 'setItem'>;
type Send = (path: string, said: unknown) => Promise<{ readonly status: number; readonly heard: unknown }>;

const place = 'laydown-away';

interface Kept {
  readonly token: string | null;
  readonly view: AwayView | null;
  /** Of the print in sight. */
  readonly print: string;
  /** Every count of this device, by its print. */
  readonly logs: Readonly<Record<string, string>>;
}

/**
 * The count as a phone keeps it: each tap is written down on the phone before it is shown, and sent until the desk has it. The desk out of reach, the page
 * killed, the phone asleep: it counts on, and what both have comes together line by line.
 */
export function createSession(room: Room, send: Send, clock: () => string) {
  const kept = recall(room);
  const token = signal(kept.token);
  const view = signal(kept.view);
  const print = signal(kept.print);
  const logs = signal(kept.logs);
  /** Lines that the desk is known to have. */
  const there = signal<ReadonlySet<string>>(new Set());
  const refused = signal(false);
  const inReach = signal(true);
  const safe = signal(true);
  let mark = -1;
  const log = computed(() => logs.value[print.value] ?? '');
  const linesOf = (text: string): string[] => text.split('\n').filter((line) => line !== '');
  const onlyHere = computed(() =>
    Object.entries(logs.value)
      .map(([of, text]) => ({ print: of, lines: linesOf(text).filter((line) => !there.value.has(line)) }))
      .filter(({ lines }) => lines.length > 0),
  );

  const keep = (): void => {
    try {
      room.setItem(
        place,
        JSON.stringify({ token: token.peek(), view: view.peek(), print: print.peek(), logs: logs.peek() } satisfies Kept),
      );
      safe.value = true;
    } catch {
      safe.value = false;
    }
  };

  return {
    token,
    view,
    refused,
    inReach,
    safe,
    state: computed(() => foldLog(readLog(log.value).events)),
    /** Taps that only this device has. */
    onlyHere: computed(() => onlyHere.value.reduce((sum, { lines }) => sum + lines.length, 0)),
    async enter(code: string): Promise<void> {
      const { status, heard } = await send('./enter', { code: code.replace(/[\s-]/g, '').toUpperCase() }).catch(() => ({
        status: 0,
        heard: null,
      }));
      inReach.value = status !== 0;
      if (status === 0) return;
      refused.value = status !== 200;
      if (status !== 200) return;
      token.value = (heard as { token: string }).token;
      keep();
    },
    tap(
      event:
        | { readonly kind: 'pull' | 'spoil'; readonly run: string; readonly sheet: string }
        | { readonly kind: 'undo'; readonly run: string },
    ): void {
      const read = readLog(log.peek());
      const at = clock();
      let counted: CountEvent;
      if (event.kind === 'undo') {
        const last = foldLog(read.events)
          .standing.filter((one) => one.event.run === event.run)
          .at(-1);
        if (!last) return;
        counted = { kind: 'undo', run: event.run, sheet: last.event.sheet, at, of: last.number };
      } else counted = { ...event, at };
      logs.value = { ...logs.peek(), [print.peek()]: log.peek() + read.joint + logLine(read.nextNumber, counted) };
      keep();
    },
    /** Gives the desk what it lacks, and takes what it has. False while it can't be reached. */
    async meet(): Promise<boolean> {
      const pass = token.peek();
      if (pass === null) return false;
      const counts = onlyHere.peek();
      const { status, heard } = await send('./count', { token: pass, mark, counts }).catch(() => ({ status: 0, heard: null }));
      inReach.value = status === 200;
      if (status === 401) {
        // The desk began a new session: this device is let in again with a new code, and keeps what it counted.
        token.value = null;
        there.value = new Set();
        mark = -1;
        keep();
      }
      if (status !== 200) return false;
      const { view: shown, mark: newest, print: now, lines: all } = heard as Heard;
      if (shown !== null) view.value = JSON.parse(shown) as AwayView;
      mark = newest;
      if (now !== '') print.value = now;
      there.value = new Set([...there.peek(), ...all]);
      if (now !== '') logs.value = { ...logs.peek(), [now]: addLogLines(logs.peek()[now] ?? '', all) };
      keep();
      return true;
    },
  };
}
export type Session = ReturnType<typeof createSession>;

interface Heard {
  readonly view: string | null;
  readonly mark: number;
  readonly print: string;
  readonly lines: readonly string[];
}

function recall(room: Room): Kept {
  const nothing = { token: null, view: null, print: '', logs: {} };
  try {
    return { ...nothing, ...(JSON.parse(room.getItem(place) ?? '{}') as Partial<Kept>) };
  } catch {
    return nothing;
  }
}
