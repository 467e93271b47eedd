import { effect } from '@preact/signals';
import { language, languages, speak } from '../words.ts';

const place = 'laydown-language';

/** Speaks the language chosen last, else the browser's own if there is a catalogue in it; keeps the page's `lang` in step. */
export function rememberLanguage(): void {
  let kept: string | null = null;
  try {
    kept = localStorage.getItem(place);
  } catch {
    // Storage is denied: the browser's own language it is.
  }
  const asked = [kept, ...navigator.languages].map((l) => l?.slice(0, 2).toLowerCase());
  const found = asked.map((id) => languages.find((l) => l.id === id)).find((l) => l !== undefined);
  if (found) speak(found.id);
  effect(() => {
    document.documentElement.lang = language.value;
  });
}

export function chooseLanguage(id: string): void {
  speak(id);
  try {
    localStorage.setItem(place, id);
  } catch {
    // It holds until the page is closed.
  }
}
