import type { Signal } from '@preact/signals';
import type { KeptVersion } from '../../store/keep/keep.ts';
import type { ShownPlan } from '../../engine/protocol.ts';
import { sayVersion, words } from '../../store/words.ts';
import type { Chosen } from './state.ts';

interface Props {
  readonly side: string;
  readonly chosen: Signal<Chosen>;
  readonly versions: readonly KeptVersion[];
  readonly plan: ShownPlan | null;
  /** Left out: no paper is to be chosen. */
  readonly paperId?: string;
}

/** Which version on which paper lies on one side. */
export function SideChoice({ side, chosen, versions, plan, paperId }: Props) {
  const w = words().compare;
  return (
    <div class="versus-choice">
      <label>
        <span class="unseen">{w.version(side)}</span>
        <select
          class="choice"
          value={String(chosen.value.which)}
          onChange={(e) => {
            const which = e.currentTarget.value;
            chosen.value = { ...chosen.value, which: which === 'now' ? 'now' : Number(which) };
          }}
        >
          <option value="now">{w.now}</option>
          {versions.map((v) => (
            <option key={v.id} value={String(v.id)}>
              {sayVersion(v)}
            </option>
          ))}
        </select>
      </label>
      {paperId !== undefined && (
        <label>
          <span class="unseen">{w.paper(side)}</span>
          <select
            class="choice"
            value={paperId}
            onChange={(e) => {
              chosen.value = { ...chosen.value, paperId: e.currentTarget.value };
            }}
          >
            {(plan?.papers ?? []).map((p) => (
              <option key={p.id} value={p.id}>
                {p.name}
              </option>
            ))}
          </select>
        </label>
      )}
    </div>
  );
}
