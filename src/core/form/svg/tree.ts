import { SaxesParser } from 'saxes';

export interface Tag {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Tag[];
}

/** The normaliser's SVG as a tree. Text is of no interest any more. */
export function readTree(text: string): { root: Tag; byId: Map<string, Tag> } {
  const byId = new Map<string, Tag>();
  const stack: Tag[] = [];
  let root: Tag = { name: 'svg', attributes: {}, children: [] };
  const parser = new SaxesParser({ xmlns: false, position: false });
  parser.on('opentag', (found) => {
    const tag: Tag = { name: found.name, attributes: found.attributes as Record<string, string>, children: [] };
    if (stack.length) stack[stack.length - 1].children.push(tag);
    else root = tag;
    if (tag.attributes.id) byId.set(tag.attributes.id, tag);
    stack.push(tag);
  });
  parser.on('closetag', () => {
    stack.pop();
  });
  parser.write(text).close();
  return { root, byId };
}

/** What a value refers to with `url(#id)`. */
export function refersTo(value: string | undefined, byId: ReadonlyMap<string, Tag>): Tag | undefined {
  const found = value ? /url\(\s*['"]?#([^)'"]+)/.exec(value) : null;
  return found ? byId.get(found[1]) : undefined;
}
