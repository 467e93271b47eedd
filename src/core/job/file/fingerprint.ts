import type { JobBundle } from '../schema/schema.ts';

/** What is written down while the work goes on: it changes no page that was printed before. */
const keptBesides: ReadonlySet<string> = new Set(['language', 'potLogs', 'done']);
const keptBesidesInEdition: ReadonlySet<string> = new Set(['record', 'setApart']);

/** Neither 0 and O nor 1, I and L: it is read from paper and typed. */
const letters = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';

/**
 * Seven characters that say what a job was when something was printed from it: `K7F-2QMB`. Any change of the work itself gives
 * others; counting sheets, logs of pots and the record do not. Names of fields in any order, files by their bytes.
 */
export function fingerprintOf({ job, attachments }: JobBundle): string {
  const hash = new Hash();
  const { edition, ...rest } = job as unknown as Record<string, unknown>;
  hash.text(canonical(without(rest, keptBesides)) ?? '');
  hash.text(canonical(without((edition ?? {}) as Record<string, unknown>, keptBesidesInEdition)) ?? '');
  for (const file of filesOf(job)) {
    const bytes = attachments.get(file);
    hash.text(file);
    if (bytes) hash.bytes(bytes);
  }
  return hash.say();
}

/** Drawings and earlier prints: the files that the pages are made from. */
function filesOf(job: JobBundle['job']): string[] {
  const named = [...job.forms.map((f) => f.drawing), ...job.papers.map((p) => p.printed?.picture)];
  return [...new Set(named.filter((file): file is string => file !== undefined))].sort();
}

/** Some value of a job as the same kind of characters. */
export function hashOf(value: unknown): string {
  const hash = new Hash();
  hash.text(canonical(value) ?? '');
  return hash.say();
}

function without(fields: Record<string, unknown>, left: ReadonlySet<string>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).filter(([key]) => !left.has(key)));
}

/** JSON with the fields in one order. */
export function canonical(value: unknown): string | undefined {
  return JSON.stringify(value, (_key, one: unknown) =>
    typeof one === 'object' && one !== null && !Array.isArray(one)
      ? Object.fromEntries(Object.entries(one).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
      : one,
  );
}

/** FNV-1a of 32 bits, twice with other beginnings (Fowler, Noll, Vo; in the public domain). Not against forgery: against mistakes. */
class Hash {
  private a = 0x811c9dc5;
  private b = 0x9747b28c;

  bytes(bytes: Uint8Array): void {
    for (const byte of bytes) {
      this.a = Math.imul(this.a ^ byte, 0x01000193);
      this.b = Math.imul(this.b ^ byte, 0x01000193) ^ (this.b >>> 15);
    }
  }

  text(text: string): void {
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      this.bytes(Uint8Array.of(code & 255, code >> 8));
    }
  }

  say(): string {
    let out = '';
    let [a, b] = [this.a >>> 0, this.b >>> 0];
    for (let i = 0; i < 7; i++) {
      const from = i % 2 === 0 ? a : b;
      out += (i === 3 ? '-' : '') + letters[from % letters.length];
      if (i % 2 === 0) a = Math.floor(a / letters.length);
      else b = Math.floor(b / letters.length);
    }
    return out;
  }
}
