import type { Problem } from '../../core/problem.ts';
import { told, words } from '../words/index.ts';

/** What is wrong or doubtful: where, what, and what to do. */
export function ProblemList({ problems }: { readonly problems: readonly Problem[] }) {
  return (
    <ul class="problems">
      {problems.map((p) => (
        <li key={`${p.code} ${p.place} ${p.message}`} class={`problem problem-${p.severity}`}>
          <b>{words().shell[p.severity]}</b>
          <span>{told(p.message)} {told(p.advice)}<small>{told(p.place)}</small></span>
        </li>
      ))}
    </ul>
  );
}
