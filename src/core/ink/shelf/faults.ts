import type { z } from 'zod';
import { list, name as asName, say, type Saying } from '../../../words/say.ts';
import { faultOf, valueAt } from '../../faults.ts';
import { problem, type Problem } from '../../problem.ts';

/** A fault that the schema found in the file of a shelf. `raw`: what the file holds. */
export function fieldProblem(issue: z.core.$ZodIssue, raw: unknown, file: Saying): Problem {
  const { message, advice } = faultOf(issue, valueAt(issue.path, raw));
  return problem('error', 'shelf-field', placeInFile(raw, file, issue.path), message, advice);
}

/** `my.shelf: ink 1 (Kelp), “densityGPerMl”`. */
export function placeInFile(raw: unknown, file: Saying, path: readonly PropertyKey[]): Saying {
  const steps: Saying[] = [];
  const fields: string[] = [];
  for (let at = 0; at < path.length; at++) {
    const key = String(path[at]);
    const next = path[at + 1];
    if (typeof next === 'number' && Object.hasOwn(numbered, key)) {
      const thing = valueAt(path.slice(0, at + 2), raw);
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
  const found = valueAt([key], thing);
  return typeof found === 'string' && found !== '' ? { name: asName(found) } : {};
}
