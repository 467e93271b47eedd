import { effect } from '@preact/signals';
import { knows, learn, type Catalogue } from '../../../words/one-language.ts';
import { language, languages, speak } from '../words.ts';

const place = 'laydown-language';

/** Each language is a file of its own, and the page waits for one only. */
const catalogues: Readonly<Record<string, () => Promise<{ readonly shown: Catalogue }>>> = {
  en: () => import('../../../words/en/shown.ts'),
  de: () => import('../../../words/de/shown.ts'),
};

async function fetchLanguage(id: string): Promise<void> {
  if (!knows(id)) learn(id, (await catalogues[id]()).shown);
}

/** The others, while the page rests: a change of language asks nothing of the network. */
export async function fetchLanguages(): Promise<void> {
  for (const { id } of languages) await fetchLanguage(id);
}

/** Speaks the language chosen last, else the browser's own if there is a catalogue in it; keeps the page's `lang` in step. */
export async function rememberLanguage(): Promise<void> {
  let kept: string | null = null;
  try {
    kept = localStorage.getItem(place);
  } catch {
    // Storage is denied: the browser's own language it is.
  }
  const asked = [kept, ...navigator.languages].map((l) => l?.slice(0, 2).toLowerCase());
  const found = asked.map((id) => languages.find((l) => l.id === id)).find((l) => l !== undefined) ?? languages[0];
  await fetchLanguage(found.id);
  speak(found.id);
  effect(() => {
    document.documentElement.lang = language.value;
  });
}

export async function chooseLanguage(id: string): Promise<void> {
  await fetchLanguage(id);
  speak(id);
  try {
    localStorage.setItem(place, id);
  } catch {
    // It holds until the page is closed.
  }
}
