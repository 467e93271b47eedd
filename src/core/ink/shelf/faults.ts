import type { z } from 'zod';
import { figure, list, name as asName, say, type Saying } from '../../../words/say.ts';
import { problem, type Problem } from '../../problem.ts';

/** A fault that the schema found in the file of a shelf. `raw`: what the file holds. */
export function fieldProblem(issue: z.core.$ZodIssue, raw: unknown, file: Saying): Problem {
  return problem('error', 'shelf-field', placeInFile(raw, file, issue.path), faultOf(issue, raw), say('recipes.correctField'));
}

/** `my.shelf: ink 1 (Kelp), “densityGPerMl”`. */
export function placeInFile(raw: unknown, file: Saying, path: readonly PropertyKey[]): Saying {
  const steps: Saying[] = [];
  const fields: string[] = [];
  for (let at = 0; at < path.length; at++) {
    const key = String(path[at]);
    const next = path[at + 1];
    if (typeof next === 'number' && Object.hasOwn(numbered, key)) {
      const thing = valueAt(raw, path.slice(0, at + 2));
      steps.push(numbered[key as keyof typeof numbered](next + 1, thing));
      at++;
    } else fields.push(typeof path[at] === 'number' ? String(Number(path[at]) + 1) : key);
  }
  if (fields.length > 0) steps.push(say('recipes.field', { field: asName(fields.join(' ')) }));
  return steps.length === 0 ? file : say('recipes.inFile', { file, steps: list(steps, 'comma') });
}

/** Lists of the file whose entries have a name of their own. */
const numbered = {
  inks: (n: number, thing: unknown) => say('recipes.inkNo', { n, ...nameIn(thing, 'name') }),
  papers: (n: number, thing: unknown) => say('recipes.paperNo', { n, ...nameIn(thing, 'name') }),
  pots: (n: number, thing: unknown) => say('recipes.potNo', { n, ...nameIn(thing, 'name') }),
  lots: (n: number, thing: unknown) => say('recipes.lotNo', { n, ...nameIn(thing, 'lot') }),
  steps: (n: number) => say('recipes.stepNo', { n }),
  rounds: (n: number) => say('recipes.drawdownNo', { n }),
  parts: (n: number) => say('recipes.partNo', { n }),
  added: (n: number) => say('recipes.additionNo', { n }),
};

function nameIn(thing: unknown, key: string): { name?: ReturnType<typeof asName> } {
  const found = valueAt(thing, [key]);
  return typeof found === 'string' && found !== '' ? { name: asName(found) } : {};
}

function faultOf(issue: z.core.$ZodIssue, raw: unknown): Saying {
  switch (issue.code) {
    case 'invalid_type':
      return issue.path.length > 0 && valueAt(raw, issue.path) === undefined
        ? say('recipes.fieldMissing')
        : say('recipes.fieldShouldBe', { what: kindOf(issue.expected) });
    case 'invalid_value':
      return say('recipes.fieldOneOf', {
        all: list(
          issue.values.map((v) => asName(String(v))),
          'or',
        ),
      });
    case 'invalid_union':
      return say('recipes.fieldUnknownKind');
    case 'invalid_format':
      return say('recipes.fieldShortName');
    case 'too_small': {
      const least = Number(issue.minimum);
      if (issue.origin === 'array') return say('recipes.fieldTooFew', { least });
      if (issue.origin === 'string') return say('recipes.fieldEmpty');
      return say(issue.inclusive ? 'recipes.fieldAtLeast' : 'recipes.fieldAbove', { least: figure(least, 2, false) });
    }
    case 'too_big': {
      const most = Number(issue.maximum);
      if (issue.origin === 'array') return say('recipes.fieldTooMany', { most });
      if (issue.origin === 'string') return say('recipes.fieldTooLong', { most });
      return say(issue.inclusive ? 'recipes.fieldAtMost' : 'recipes.fieldBelow', { most: figure(most, 2, false) });
    }
    default:
      return say('recipes.fieldUnreadable');
  }
}

function kindOf(expected: string): Saying {
  if (expected === 'number' || expected === 'int') return say('recipes.aNumber');
  if (expected === 'string') return say('recipes.aText');
  return say(expected === 'array' || expected === 'tuple' ? 'recipes.aList' : 'recipes.aGroup');
}

function valueAt(raw: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key) ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    raw,
  );
}
