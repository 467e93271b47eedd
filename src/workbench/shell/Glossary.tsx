import { useSignal } from '@preact/signals';
import { termName, type TermId } from '../ui/fields/terms.ts';
import { words } from '../store/words.ts';

/** Every word of the trade; the one chosen is explained. */
export function Glossary() {
  const { glossary } = words();
  const at = useSignal<TermId | null>(null);
  const terms = Object.keys(glossary.terms) as TermId[];
  const term = at.value && glossary.terms[at.value];
  return (
    <div class="glossary">
      <p class="term-says" aria-live="polite">
        {term ? (
          <>
            <b>{termName(at.value!)}</b> {term.says}
          </>
        ) : (
          glossary.choose
        )}
      </p>
      <ul class="glossary-words" aria-label={glossary.all}>
        {terms.map((id) => (
          <li key={id}>
            <button
              type="button"
              class="term"
              aria-pressed={at.value === id}
              onClick={() => {
                at.value = id;
              }}
            >
              {termName(id)}
            </button>
          </li>
        ))}
      </ul>
      <p class="glossary-foot">
        <a href="licences.txt">{glossary.licences}</a>
      </p>
    </div>
  );
}
