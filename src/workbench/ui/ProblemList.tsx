import type { Problem } from '../../core/problem.ts';
import { capital } from '../../words/grammar.ts';
import { follow, placed } from '../store/leads.ts';
import { told, words } from '../store/words.ts';

/** What is wrong or doubtful: what, what to do, and where. Where it is mended at a station, the place leads there. */
export function ProblemList({ problems }: { readonly problems: readonly Problem[] }) {
  return (
    <ul class="problems">
      {placed(problems).map((p, at) => (
        <li key={`${at} ${p.code}`} class={`problem problem-${p.severity}`}>
          <b>{words().shell[p.severity]}</b>
          <span>
            {told(p.message)} {told(p.advice)}
            <Place problem={p} />
          </span>
        </li>
      ))}
    </ul>
  );
}

function Place({ problem: { where, lead } }: { readonly problem: Problem }) {
  if (!where) return null;
  if (!lead) return <small>{capital(told(where))}</small>;
  return (
    <button type="button" class="link problem-place" onClick={() => follow(lead)}>
      {words().shell.seePlace(told(where))}
    </button>
  );
}
