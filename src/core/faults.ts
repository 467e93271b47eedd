import type { z } from 'zod';
import { figure, length, list, name as asName, say, share, type Quantity, type Saying } from '../words/say.ts';

/** What is wrong, and what to do. */
export interface Told {
  readonly message: Saying;
  readonly advice: Saying;
}

/** What a schema found wrong with a value of a document (a job, a shelf), in the printmaker's words. */
export function faultOf(issue: z.core.$ZodIssue, value: unknown): Told {
  switch (issue.code) {
    case 'invalid_type': {
      if (value === undefined) return { message: say('job.missing'), advice: say('job.writeIn') };
      const what = kinds[issue.expected] ?? say('job.somethingElse');
      const written = asWrittenThere(value);
      return {
        message: written ? say('job.wantedNot', { what, found: written }) : say('job.wanted', { what }),
        advice: say('job.correctKind'),
      };
    }
    case 'invalid_value':
      return { message: allowed(issue.values.map(String), value), advice: say('job.useAllowed') };
    case 'invalid_union': {
      const options = 'options' in issue && Array.isArray(issue.options) ? issue.options.map(String) : null;
      return options
        ? { message: allowed(options, value), advice: say('job.useAllowed') }
        : { message: say('job.notUnderstood'), advice: say('job.correctKind') };
    }
    case 'too_small':
    case 'too_big':
      return outOfRange(issue, value);
    case 'invalid_format':
      return {
        message: Object.hasOwn(formats, issue.message) ? formats[issue.message as Format] : say('job.notUnderstood'),
        advice: say('job.correct'),
      };
    default:
      return { message: say('job.notUnderstood'), advice: say('job.correct') };
  }
}

const kinds: Readonly<Record<string, Saying>> = {
  string: say('job.aText'),
  number: say('job.aNumber'),
  int: say('job.aWholeNumber'),
  boolean: say('job.yesOrNo'),
  array: say('job.aList'),
  tuple: say('job.aList'),
  object: say('job.aGroup'),
  record: say('job.aGroup'),
};
/** Patterns that documents hold texts to. */
export type Format = 'short-name' | 'file-inside' | 'colour' | 'plain-line' | 'plain-note';

const formats: Readonly<Record<Format, Saying>> = {
  'short-name': say('job.shortName'),
  'file-inside': say('job.fileInside'),
  colour: say('job.colourWritten'),
  'plain-line': say('job.plainLine'),
  'plain-note': say('job.plainNote'),
};

function allowed(options: readonly string[], value: unknown): Saying {
  const all = list(
    options.map((option) => asName(option)),
    'or',
  );
  const written = asWrittenThere(value);
  if (value === undefined) return say('job.missingOneOf', { allowed: all });
  return written ? say('job.oneOfNot', { allowed: all, found: written }) : say('job.oneOf', { allowed: all });
}

function outOfRange(issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig, value: unknown): Told {
  const small = issue.code === 'too_small';
  const limit = Number(small ? issue.minimum : issue.maximum);
  if (typeof value === 'number') {
    const quantity = (of: number): (Quantity & { kind: 'length' }) | (Quantity & { kind: 'number' }) =>
      String(issue.path.at(-1)).endsWith('Mm') ? length(of) : figure(of, 6, false);
    if (!small && limit === 1 && value > 1 && value <= 100) {
      return {
        message: say('job.shareAbove1', { is: figure(value, 6, false) }),
        advice: say('job.writeShare', { percent: share(value / 100), written: asName(String(Number((value / 100).toPrecision(12)))) }),
      };
    }
    const is = quantity(value);
    if (small) {
      const least = quantity(limit);
      return {
        message: issue.inclusive === false ? say('job.moreThan', { least, is }) : say('job.atLeast', { least, is }),
        advice: say('job.useLarger'),
      };
    }
    const most = quantity(limit);
    return {
      message: issue.inclusive === false ? say('job.lessThan', { most, is }) : say('job.atMost', { most, is }),
      advice: say('job.useSmaller'),
    };
  }
  if (issue.origin === 'string') {
    return small
      ? { message: say('job.empty'), advice: say('job.writeIn') }
      : { message: say('job.tooLong', { most: limit }), advice: say('job.shorten') };
  }
  return {
    message: issue.exact
      ? say('job.exactly', { wanted: limit })
      : small
        ? say('job.tooFew', { least: limit })
        : say('job.tooMany', { most: limit }),
    advice: say('job.addOrRemove'),
  };
}

/** What stands in the document at a path. */
export function valueAt(path: readonly PropertyKey[], document: unknown): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key) ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    document,
  );
}

/** A plain value as it was written, unless it is endless. */
function asWrittenThere(value: unknown): ReturnType<typeof asName> | null {
  if (typeof value !== 'string' && typeof value !== 'number' && typeof value !== 'boolean') return null;
  const text = String(value);
  return asName(text.length > 60 ? `${text.slice(0, 60)}…` : text);
}
