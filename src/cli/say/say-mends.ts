import type { Mend, Stencil } from '../../core/stencil/index.ts';
import { area, list, say, type Saying } from '../../words/index.ts';
import { pointAt } from './say-islands.ts';

/** So many places are named, those most seen; all are counted. */
const named = 3;

/** What prints other than drawn so that the stencil holds and can be cut: before anything is cut. */
export function sayMends({ mends = [] }: Stencil): Saying[] {
  const of = (kind: Mend['kind']) => {
    const some = mends.filter((mend) => mend.kind === kind);
    const at = list(
      some.slice(0, named).map((mend) => pointAt(mend.at)),
      'semicolon',
    );
    return { n: some.length, area: area(some.reduce((sum, mend) => sum + mend.areaMm2, 0)), at };
  };
  const free = of('broader'),
    more = of('wider');
  return [...(free.n > 0 ? [say('answers.keptFree', free)] : []), ...(more.n > 0 ? [say('answers.printsMore', more)] : [])];
}
