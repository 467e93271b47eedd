import { describe, expect, test } from 'vitest';
import { de } from '../../../words/de/bench/index.ts';
import { en } from '../../../words/en/bench/index.ts';
import { termsIn } from './terms.ts';

describe('the trade’s words in a text', () => {
  test('each is found once, in the order it comes, whole words only', () => {
    expect(termsIn('Risers hold the gap; the gap lets the mesh lift.', en.glossary)).toEqual(['riser', 'gap', 'mesh']);
    expect(termsIn('A runner, informed, cuts a stopper.', en.glossary)).toEqual(['cut']);
  });

  test('the longer word goes before the shorter one in it', () => {
    expect(termsIn('Lay the loose piece down.', en.glossary)).toEqual(['loose']);
    expect(termsIn('Die Stärkenreihe zeigt jede Stärke.', de.glossary)).toEqual(['ladder', 'strength']);
  });

  test('no word is explained by an empty text, and none explains two things', () => {
    for (const { glossary } of [en, de]) {
      const names = Object.values(glossary.terms).flatMap((t) => t.names.toLowerCase().split(', '));
      expect(names.filter((n, i) => names.indexOf(n) !== i)).toEqual([]);
      for (const term of Object.values(glossary.terms)) expect(term.says.length).toBeGreaterThan(15);
    }
  });
});
