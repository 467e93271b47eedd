import { useId } from 'preact/hooks';
import { chooseLanguage } from '../../store/keep/remember-language.ts';
import { language, languages, words } from '../../store/words.ts';

/** The languages in their own words, two radio buttons. In the header where there is room, else where a job is opened: one of them is in sight. */
export function LanguageSwitch() {
  const name = useId();
  if (languages.length < 2) return null;
  return (
    <fieldset class="language-switch">
      <legend class="unseen">{words().shell.language}</legend>
      {languages.map((l) => (
        <label key={l.id} lang={l.id}>
          <input type="radio" name={name} value={l.id} checked={l.id === language.value} onChange={() => void chooseLanguage(l.id)} />
          <span>{l.name}</span>
        </label>
      ))}
    </fieldset>
  );
}
