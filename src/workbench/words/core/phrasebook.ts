/**
 * What core says, in another language. Core knows no languages: it says English sentences, and a phrasebook has them as keys, with
 * places for the values: `'Run {n} ({name}): {what}': 'Lauf {n} ({name}): {what*}'`. In the answer `{name}` stands as it was said (a
 * number gets the language's decimal mark) and `{what*}` is looked up in turn. In a key `{n#}` takes numbers only. Values that core
 * sets side by side are one place. A text of several sentences or clauses is taken apart where the book knows more of it that way.
 */
export type Phrases = Readonly<Record<string, string>>;

/** Says a text of core in another language; what the book doesn't hold stays as it is. */
export type Phrasebook = (text: string) => string;

interface Phrase {
  /** Its longest piece between values: a text without it needs no closer look. */
  readonly must: string;
  readonly pattern: RegExp;
  /** Text, then a value, then text …; of a value its place in the match and whether it is a phrase itself. */
  readonly answer: readonly (string | { readonly at: number; readonly phrase: boolean })[];
  /** Letters that are not values: of two phrases that fit, the one with more of them says more. */
  readonly letters: number;
}

interface Said {
  readonly text: string;
  /** How many letters the book knew, and how many it should have known and did not; numbers and names are neither. */
  readonly known: number;
  readonly missed: number;
}

const better = (one: Said, other: Said): boolean => one.missed < other.missed || (one.missed === other.missed && one.known > other.known);

const places = /\{(\w+)([*#]?)\}/;
const firstWord = (text: string): string => /^[^\s{]+(?=\s)/.exec(text)?.[0] ?? '';
const sentenceIn = /[.!?]\s[\p{Lu}\d]|;\s/u;
const clauseEnds = /[.!?;:,](?=\s\S)/g;
/** A text with more clauses than this is not taken apart. */
const mostClauses = 40;
const mostRemembered = 4000;
const fewLetters = 6;
const number = '[\\d\\s.,:=×–−±/-]+?';
/** A value that is a number, a range or a size, with or without a unit: `1.5`, `0.2–0.3`, `12.5 × 18.0 mm`. */
const numeric = new RegExp(`^${number}(?:(?:mm|cm|m|in|µm|mil|g|kg|oz|min|h|%|°)[\\s×–-]*(?:${number})?)*$`, 'u');

/** `decimal`: the mark that the language writes between a whole number and its fraction. */
export function phrasebook(phrases: Phrases, decimal: string): Phrasebook {
  const exact = new Map<string, string>();
  const byFirstWord = new Map<string, [string, string][]>();
  const entries = Object.entries(phrases);
  // What is said before another sentence ends in a space, which is none of it where the text is taken apart.
  const ends = entries.filter(([key]) => key.endsWith(' ')).map(([key, answer]) => [key.trimEnd(), answer.trimEnd()] as const);
  for (const [key, answer] of [...entries, ...ends]) {
    if (!key.includes('{')) {
      exact.set(key, answer);
      continue;
    }
    const first = firstWord(key);
    byFirstWord.set(first, [...(byFirstWord.get(first) ?? []), [key, answer]]);
  }
  const read = new Map<string, readonly Phrase[]>();
  const memo = new Map<string, Said>();
  const local = (value: string): string => (numeric.test(value) ? value.replace(/(\d)\.(?=\d)/g, `$1${decimal}`) : value);

  function phrasesFor(first: string): readonly Phrase[] {
    let known = read.get(first);
    if (!known) read.set(first, (known = (byFirstWord.get(first) ?? []).map(([key, answer]) => phrase(key, answer))));
    return known;
  }

  /** A label can stand in the middle of a sentence and begin small, a piece of a sentence can begin one. */
  function whole(text: string): Said {
    const said = asWritten(text);
    if (said.missed === 0) return said;
    const small = text.charAt(0).toLowerCase() + text.slice(1);
    if (small === text)
      return exact.has(text.charAt(0).toUpperCase() + text.slice(1)) ? asWritten(text.charAt(0).toUpperCase() + text.slice(1)) : said;
    const begun = asWritten(small);
    return begun.missed === 0 && begun.known > 0 ? { ...begun, text: begun.text.charAt(0).toUpperCase() + begun.text.slice(1) } : said;
  }

  function asWritten(text: string): Said {
    const same = exact.get(text);
    if (same !== undefined) return { text: same, known: text.length, missed: 0 };
    let best: Said = { text: local(text), known: 0, missed: numeric.test(text) ? 0 : text.length };
    const first = firstWord(text);
    const plain = text.replaceAll('\u00a0', ' ');
    for (const one of first === '' ? phrasesFor('') : [...phrasesFor(first), ...phrasesFor('')]) {
      const match = plain.includes(one.must) ? one.pattern.exec(text) : null;
      if (!match) continue;
      let [known, missed] = [one.letters, 0];
      const said = one.answer.map((part) => {
        if (typeof part === 'string') return part;
        if (!part.phrase) {
          // A name has no sentences in it: this place took in what comes after.
          if (sentenceIn.test(match[part.at])) missed += match[part.at].length;
          return local(match[part.at]);
        }
        const inTurn = say(match[part.at]);
        known += inTurn.known;
        missed += inTurn.missed;
        return inTurn.text;
      });
      const found: Said = { text: said.join(''), known, missed };
      // `{a} and {b}` fits too much: it counts where both sides are known.
      if (better(found, best) && (missed === 0 || one.letters > fewLetters)) best = found;
    }
    return best;
  }

  function say(text: string): Said {
    const before = memo.get(text);
    if (before) return before;
    let best = whole(text);
    const ends = best.known === text.length ? [] : [...text.matchAll(clauseEnds)];
    if (ends.length > mostClauses) ends.length = 0;
    const take = (head: string, tail: string, between: string): void => {
      const [one, other] = [whole(head), say(tail)];
      const both: Said = { text: one.text + between + other.text, known: one.known + other.known, missed: one.missed + other.missed };
      if (better(both, best)) best = both;
    };
    for (const { index } of ends) {
      // A piece of a sentence may begin with its space (` Then it fits.`) or its comma (`, by hand`).
      take(text.slice(0, index + 1), text.slice(index + 2), ' ');
      take(text.slice(0, index + 1), text.slice(index + 1), '');
      if (index > 0 && /[,;]/.test(text[index])) take(text.slice(0, index), text.slice(index), '');
    }
    memo.set(text, best);
    return best;
  }

  return (text) => {
    if (memo.size > mostRemembered) memo.clear();
    return say(text).text;
  };
}

function phrase(key: string, answer: string): Phrase {
  const names: string[] = [];
  let pattern = '';
  let must = '';
  let letters = 0;
  key.split(places).forEach((piece, i, pieces) => {
    if (i % 3 === 0) {
      // Lengths are said with a space that doesn't break.
      pattern += piece.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&').replace(/ /g, '[ \\u00a0]');
      letters += piece.length;
      if (piece.length > must.length) must = piece;
    } else if (i % 3 === 1) {
      names.push(piece);
      pattern += pieces[i + 1] === '#' ? `(${number})` : '([^]*?)';
    }
  });
  const said: Phrase['answer'][number][] = [];
  answer.split(places).forEach((piece, i, pieces) => {
    if (i % 3 === 0) said.push(piece);
    else if (i % 3 === 1) said.push({ at: names.indexOf(piece) + 1, phrase: pieces[i + 1] === '*' });
  });
  return { must, pattern: new RegExp(`^${pattern}$`, 'u'), answer: said, letters };
}

/** A phrase with its places bare: what a text of core and its key have in common. */
export function bare(key: string): string {
  return key.replace(/\{\w*[*#]?\}/g, '{}').replace(/\{\}(?:\s*\{\})+/g, '{}');
}
