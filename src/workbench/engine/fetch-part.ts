import { fail } from '../../core/problem.ts';
import { name as asName, say } from '../../words/one-language.ts';

/** A file of Laydown's own, fetched when a worker starts so that nothing is asked for later. Throws `ProblemError` when it does not come. */
export async function fetchPart(url: string): Promise<Uint8Array<ArrayBuffer>> {
  const response = await fetch(url).catch(() => null);
  if (!response?.ok) {
    const part = asName(url.replace(/^.*\//, ''));
    return fail('part-missing', say('where.workbench'), say('engine.partMissing', { part }), say('engine.loadAgain'));
  }
  return new Uint8Array(await response.arrayBuffer());
}
