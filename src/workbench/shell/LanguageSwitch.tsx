import { chooseLanguage } from '../words/remember.ts';
import { language, languages, words } from '../words/index.ts';

/** Shown as soon as there is a second language; each is named in itself. */
export function LanguageSwitch() {
  if (languages.length < 2) return null;
  return (
    <label>{words().shell.language}{' '}
      <select class="choice" value={language.value} onChange={(e) => chooseLanguage(e.currentTarget.value)}>
        {languages.map((l) => <option key={l.id} value={l.id} lang={l.id}>{l.name}</option>)}
      </select>
    </label>
  );
}
