import { useSignal } from '@preact/signals';
import { words } from '../../store/words.ts';
import { termName, termsIn, type TermId } from './terms.ts';

/** More than this is a list to study, not help where the hand is. */
const mostTerms = 6;

/** The trade's words of a text below it; what one means opens right there. */
export function Terms({ text }: { readonly text: string }) {
  const open = useSignal<TermId | null>(null);
  const { glossary } = words();
  const found = termsIn(text).slice(0, mostTerms);
  if (found.length === 0) return null;
  return (
    <div class="terms">
      <p>
        {glossary.here}{' '}
        {found.map((id) => (
          <button
            key={id}
            type="button"
            class="term"
            aria-expanded={open.value === id}
            onClick={() => {
              open.value = open.value === id ? null : id;
            }}
          >
            {termName(id)}
          </button>
        ))}
      </p>
      {open.value !== null && found.includes(open.value) && (
        <p class="term-says" role="status">
          <b>{termName(open.value)}</b> {glossary.terms[open.value].says}
        </p>
      )}
    </div>
  );
}
