import { useState } from 'preact/hooks';
import { lineFromText } from '../../../../../core/press/index.ts';
import { sayNumber } from '../../../../ui/fields/units.ts';
import { words } from '../../../../store/words.ts';

interface Props {
  readonly label: string;
  /** Whole, for those who hear the page. */
  readonly name: string;
  readonly line: number | null;
  readonly readsMm: number;
  /** Lines on each side of the middle one. */
  readonly most: number;
  /** `typed`: a whole entry; else one more step. */
  readonly onSet: (line: number | null, typed: boolean) => void;
}

/** The line of a scale that meets: typed, or stepped to with a thumb. `2.4 mm` from a rule is read too. */
export function LineField({ label, name, line, readsMm, most, onSet }: Props) {
  const w = words().press;
  const [typed, setTyped] = useState<string | null>(null);
  const read = typed === null ? line : lineFromText(typed, readsMm);
  const wrong = read !== null && !(Math.abs(read) * readsMm <= 10);
  const commit = (): void => {
    if (typed === null || wrong) return;
    setTyped(null);
    if (read !== line) onSet(read, true);
  };
  const step = (by: number): void => {
    setTyped(null);
    onSet(Math.max(-most, Math.min(most, Math.round(line ?? 0) + (line === null ? 0 : by))), false);
  };
  return (
    <div class="line-field">
      <span class="line-label" aria-hidden="true">
        {label}
      </span>
      <button type="button" class="button button-box" aria-label={w.lineLess(name)} onClick={() => step(-1)}>
        −
      </button>
      <input
        type="text"
        inputMode="text"
        autocomplete="off"
        aria-label={name}
        aria-invalid={wrong}
        value={typed ?? (line === null ? '' : sayNumber(line, 1, false))}
        placeholder="·"
        onInput={(e) => setTyped(e.currentTarget.value)}
        onBlur={commit}
        onKeyDown={(e) => {
          if (e.key === 'Escape') setTyped(null);
          if (e.key !== 'Enter' || wrong) return;
          // Else the same key would press the button that it comes to.
          e.preventDefault();
          commit();
          // On to the next field, as a pencil would.
          const fields = [...document.querySelectorAll<HTMLElement>('.line-field input, .test-next')];
          fields[fields.indexOf(e.currentTarget) + 1]?.focus();
        }}
      />
      <button type="button" class="button button-box" aria-label={w.lineMore(name)} onClick={() => step(1)}>
        +
      </button>
      {wrong && (
        <span class="field-wrong" role="alert">
          {w.lineWrong(most)}
        </span>
      )}
    </div>
  );
}
