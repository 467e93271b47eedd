import type { z } from 'zod';
import { name as asName, say } from '../../../words/say.ts';
import { problem, type Problem } from '../../problem.ts';
import { JobSchema } from '../schema/schema.ts';

/** Fields that no Laydown of this version knows: they are kept, and said, with the field that is likely meant. */
export function unknownFields(document: unknown): Problem[] {
  const found: Problem[] = [];
  look(JobSchema, document, '', found);
  return found;
}

function look(schema: z.ZodType, value: unknown, path: string, found: Problem[]): void {
  const { def } = unwrapped(schema);
  if (Array.isArray(value)) {
    const element = (def as { element?: z.ZodType }).element;
    if (element) value.forEach((one, i) => look(element, one, `${path}[${i}]`, found));
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  const shape = shapeOf(unwrapped(schema), value as Record<string, unknown>);
  if (!shape) return;
  for (const [key, inner] of Object.entries(value)) {
    const at = path === '' ? key : `${path}.${key}`;
    if (Object.hasOwn(shape, key)) look(shape[key], inner, at, found);
    else {
      const meant = nearest(key, Object.keys(shape));
      const field = asName(key);
      found.push(
        problem(
          'note',
          'unknown-field',
          path,
          say('job.unknownField', { field }),
          meant === null ? say('job.keptAsItIs') : say('job.didYouMean', { meant: asName(meant) }),
        ),
      );
    }
  }
}

type Shape = Record<string, z.ZodType>;

/** Without defaults and “may be left out”. */
export function unwrapped(schema: z.ZodType): z.ZodType {
  let one = schema;
  for (;;) {
    const inner = (one.def as { innerType?: z.ZodType }).innerType;
    if (!inner) return one;
    one = inner;
  }
}

/** The fields of an object, or of the kind of it that its own mark chooses. Null where every name is one's own (a record). */
export function shapeOf(schema: z.ZodType, value?: Record<string, unknown>): Shape | null {
  const def = schema.def as { type: string; shape?: Shape; options?: z.ZodType[]; discriminator?: string };
  if (def.type === 'object') return def.shape ?? null;
  if (def.type !== 'union' || !def.options) return null;
  const shapes = def.options.map((option) => shapeOf(unwrapped(option)) ?? {});
  const mark = def.discriminator;
  const chosen = mark && value ? shapes.find((shape) => valuesOf(shape[mark]).includes(value[mark])) : undefined;
  return chosen ?? Object.assign({}, ...shapes);
}

function valuesOf(schema: z.ZodType | undefined): readonly unknown[] {
  return (schema?.def as { values?: readonly unknown[] } | undefined)?.values ?? [];
}

/** The name that is fewest slips of the hand away, if few enough. */
export function nearest(typed: string, known: readonly string[]): string | null {
  const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, '');
  const ranked = known
    .map((one) => ({
      one,
      slips: slips(plain(typed), plain(one)),
      unit: plain(one).replace(/(mm|microns|percent|deg)$/, '') === plain(typed),
    }))
    .map((r) => ({ ...r, slips: r.unit ? 0.5 : r.slips }))
    .sort((a, b) => a.slips - b.slips);
  const best = ranked.at(0);
  return best && best.slips <= Math.max(1, Math.floor(typed.length / 4) + (typed.length > 5 ? 1 : 0)) ? best.one : null;
}

/** Letters left out, put in, taken for others, or two that changed places (Damerau 1964, neighbours only). */
function slips(a: string, b: string): number {
  const rows = Array.from({ length: a.length + 1 }, (_, i) =>
    Array.from({ length: b.length + 1 }, (_v, k) => (i === 0 ? k : k === 0 ? i : 0)),
  );
  for (let i = 1; i <= a.length; i++)
    for (let k = 1; k <= b.length; k++) {
      rows[i][k] = Math.min(rows[i - 1][k] + 1, rows[i][k - 1] + 1, rows[i - 1][k - 1] + (a[i - 1] === b[k - 1] ? 0 : 1));
      if (i > 1 && k > 1 && a[i - 1] === b[k - 2] && a[i - 2] === b[k - 1]) rows[i][k] = Math.min(rows[i][k], rows[i - 2][k - 2] + 1);
    }
  return rows[a.length][b.length];
}
