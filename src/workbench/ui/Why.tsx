import type { ComponentChildren } from 'preact';
import { words } from '../words/index.ts';

interface Props {
  /** What the number is, for those who hear the page: `Gap`. */
  readonly of: string;
  readonly children: ComponentChildren;
}

/** What a number was worked out from and how sure it is, a touch away from it. */
export function Why({ of, children }: Props) {
  return (
    <details class="why">
      <summary><span aria-hidden="true">{words().press.why}</span><span class="unseen">{words().press.whyOf(of)}</span></summary>
      <div class="why-text">{children}</div>
    </details>
  );
}
