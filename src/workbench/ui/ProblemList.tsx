import type { Problem } from '../../core/problem.ts';
import { told, words } from '../store/words.ts';
import { inUnits } from './in-units.ts';
import type { LengthUnits } from './units.ts';

/** What is wrong or doubtful: where, what, and what to do. `units`: the job's, where it speaks of lengths. */
export function ProblemList({ problems, units = 'mm' }: { readonly problems: readonly Problem[]; readonly units?: LengthUnits }) {
  return (
    <ul class="problems">
      {problems.map((p) => (
        <li key={`${p.code} ${p.path}`} class={`problem problem-${p.severity}`}>
          <b>{words().shell[p.severity]}</b>
          <span>
            {inUnits(p.message, units)} {inUnits(p.advice, units)}
            <small>{told(p.path)}</small>
          </span>
        </li>
      ))}
    </ul>
  );
}
