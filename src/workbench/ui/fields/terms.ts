import { toChildArray, type ComponentChildren, type VNode } from 'preact';
import { words, type Words } from '../../store/words.ts';

export type TermId = keyof Words['glossary']['terms'];

/** How each catalogue says its terms, longest first, so that `loose piece` is not taken for `piece`. */
const looks = new WeakMap<Words['glossary'], readonly (readonly [TermId, string])[]>();

function spellings(glossary: Words['glossary']): readonly (readonly [TermId, string])[] {
  let list = looks.get(glossary);
  if (!list) {
    list = (Object.entries(glossary.terms) as [TermId, Words['glossary']['terms']['form']][])
      .flatMap(([id, term]) => term.names.split(', ').map((name) => [id, name.toLowerCase()] as const))
      .sort((a, b) => b[1].length - a[1].length);
    looks.set(glossary, list);
  }
  return list;
}

const isLetter = (sign: string | undefined): boolean => sign !== undefined && /\p{L}/u.test(sign);

/** The trade's words that a text uses, in the order they come. */
export function termsIn(text: string, glossary: Words['glossary'] = words().glossary): TermId[] {
  let left = text.toLowerCase();
  const found = new Map<TermId, number>();
  for (const [id, name] of spellings(glossary)) {
    for (let at = left.indexOf(name); at >= 0; at = left.indexOf(name, at + 1)) {
      if (isLetter(left[at - 1]) || isLetter(left[at + name.length])) continue;
      found.set(id, Math.min(at, found.get(id) ?? Infinity));
      left = left.slice(0, at) + ' '.repeat(name.length) + left.slice(at + name.length);
    }
  }
  return [...found].sort((a, b) => a[1] - b[1]).map(([id]) => id);
}

/** The word itself. */
export function termName(id: TermId): string {
  return words().glossary.terms[id].names.split(', ')[0];
}

/** All that can be read in some children. */
export function textOf(children: ComponentChildren): string {
  return toChildArray(children)
    .map((child) => (typeof child === 'object' ? textOf((child as VNode<{ children?: ComponentChildren }>).props.children) : String(child)))
    .join(' ');
}
