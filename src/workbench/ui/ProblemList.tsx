import type { Problem } from '../../core/problem.ts';
import { capital } from '../../words/grammar.ts';
import type { Saying } from '../../words/one-language.ts';
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
  if (!lead) return <small>{beginning(where)}</small>;
  return (
    <button type="button" class="link problem-place" onClick={() => follow(lead)}>
      {words().shell.seePlace(told(where))}
    </button>
  );
}

/** Stands first, so with a capital; but a file's own name stays as it is written. */
function beginning(where: Saying): string {
  const text = told(where);
  const named = Object.values(where.values ?? {}).some(
    (v) => typeof v === 'object' && 'kind' in v && v.kind === 'name' && text.startsWith(v.name),
  );
  return named ? text : capital(text);
}
