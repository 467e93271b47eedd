import type { ComponentChildren } from 'preact';
import { useSignal } from '@preact/signals';
import { words } from '../../store/words.ts';
import { Terms } from './Terms.tsx';
import { textOf } from './terms.ts';

interface Props {
  /** What the number is, for those who hear the page: `Gap`. */
  readonly of: string;
  readonly children: ComponentChildren;
}

/** What a number was worked out from and how sure it is, a touch away from it; the trade's words in it are explained below. */
export function Why({ of, children }: Props) {
  const open = useSignal(false);
  return (
    <details
      class="why"
      onToggle={(e) => {
        open.value = e.currentTarget.open;
      }}
    >
      <summary>
        <span aria-hidden="true">{words().press.why}</span>
        <span class="unseen">{words().press.whyOf(of)}</span>
      </summary>
      <div class="why-text">
        {children}
        {open.value && <Terms text={textOf(children)} />}
      </div>
    </details>
  );
}
