import { safeId } from './ids.ts';

/** What stands in an element and below it, and what that refers to. */
interface Counted {
  readonly name: string;
  elements: number;
  /** Characters of path data and points: what a reference repeats is not only elements. */
  characters: number;
  readonly refers: Map<string, number>;
}

export interface Expanded {
  readonly elements: number;
  readonly characters: number;
}

/** Referred to by many shapes, these stay one thing: nothing is written out again for each of them. */
const shared = new Set(['linearGradient', 'radialGradient', 'filter', 'solidcolor']);
/** Properties of a group that hold for every shape in it. */
const inherited = ['fill', 'stroke', 'marker', 'marker-start', 'marker-mid', 'marker-end'];
const shapes = new Set(['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon', 'text', 'use']);
const deepest = 500;

/**
 * Counts a drawing as it would be with every reference written out: `use`, clip paths, masks, patterns, and markers once for
 * each point of a path. Small files that become huge ones grow in breadth as well as in depth.
 */
export class ReferenceCount {
  private readonly byId = new Map<string, Counted>();
  private readonly whole: Counted = { name: 'svg', elements: 0, characters: 0, refers: new Map() };
  private readonly open: { readonly counted: Counted | undefined; readonly holds: ReadonlyMap<string, readonly string[]> }[] = [];
  /** References made by a style sheet, by class; under `''` those of other rules, which may mean anything. */
  private readonly byClass = new Map<string, string[]>();
  private rules = 0;
  private readonly later: { readonly into: readonly Counted[]; readonly classes: readonly string[]; readonly times: number }[] = [];

  openTag(name: string, attributes: Readonly<Record<string, string>>): void {
    const id = attributes['id'] ?? '';
    const fresh = id !== '' && !this.byId.has(id);
    const counted: Counted | undefined = fresh ? { name, elements: 0, characters: 0, refers: new Map() } : undefined;
    if (counted) this.byId.set(id, counted);
    const before = this.open[this.open.length - 1]?.holds ?? new Map<string, readonly string[]>();
    const own = referencesOf(attributes);
    const kept = inherited.filter((key) => own.has(key) || attributes[key] !== undefined);
    const holds = kept.length > 0 ? new Map([...before, ...kept.map((key) => [key, own.get(key) ?? []] as const)]) : before;
    this.open.push({ counted, holds });

    const into = [this.whole, ...this.open.flatMap((o) => o.counted ?? [])];
    const characters = (attributes['d'] ?? attributes['points'] ?? '').length;
    const corners =
      1 + (attributes['d'] ?? '').replace(/[^a-z]/gi, '').length + ((attributes['points'] ?? '').match(/[\s,]+/g)?.length ?? 0) / 2;
    for (const c of into) {
      c.elements++;
      c.characters += characters;
    }
    const refer = (to: string, times: number): void => {
      for (const c of into) c.refers.set(to, (c.refers.get(to) ?? 0) + times);
    };
    for (const [key, ids] of own) if (!inherited.includes(key)) for (const to of ids) refer(to, 1);
    if (!shapes.has(name)) return;
    for (const [key, ids] of holds) for (const to of ids) refer(to, key.startsWith('marker') ? corners : 1);
    const classes = (attributes['class'] ?? '').split(/\s+/).filter(Boolean);
    this.later.push({ into, classes, times: corners });
  }

  closeTag(): void {
    this.open.pop();
  }

  /** A style sheet's rules: how many there are, and what they refer to. */
  sheet(text: string): void {
    for (const [, selectors, body] of text.matchAll(/([^{}]*)\{([^{}]*)\}/g)) {
      const ids = idsIn(body);
      const list = selectors.split(',');
      this.rules += list.length;
      if (ids.length === 0) continue;
      for (const selector of list) {
        const name = /^\s*\.([\w-]+)\s*$/.exec(selector)?.[1] ?? '';
        this.byClass.set(name, [...(this.byClass.get(name) ?? []), ...ids]);
      }
    }
  }

  /** Rules of style sheets times elements that each is held against. */
  matches(): number {
    return this.rules * this.whole.elements;
  }

  expanded(): Expanded {
    if (this.byClass.size > 0) {
      const loose = this.byClass.get('') ?? [];
      for (const { into, classes, times } of this.later)
        for (const to of [...loose, ...classes.flatMap((name) => this.byClass.get(name) ?? [])])
          for (const c of into) c.refers.set(to, (c.refers.get(to) ?? 0) + times);
    }
    const known = new Map<string, Expanded>();
    const busy = new Set<string>();
    const sizeOf = (id: string): Expanded => {
      const had = known.get(id);
      if (had) return had;
      const counted = this.byId.get(id);
      if (!counted || shared.has(counted.name) || busy.has(id) || busy.size > deepest) return { elements: 0, characters: 0 };
      busy.add(id);
      const size = sum(counted);
      busy.delete(id);
      known.set(id, size);
      return size;
    };
    const sum = (counted: Counted): Expanded => {
      let { elements, characters } = counted;
      for (const [to, times] of counted.refers) {
        const size = sizeOf(to);
        elements = Math.min(1e12, elements + times * size.elements);
        characters = Math.min(1e15, characters + times * size.characters);
      }
      return { elements, characters };
    };
    return sum(this.whole);
  }
}

function referencesOf(attributes: Readonly<Record<string, string>>): Map<string, string[]> {
  const found = new Map<string, string[]>();
  const add = (key: string, ids: readonly string[]): void => {
    if (ids.length > 0) found.set(key, [...(found.get(key) ?? []), ...ids]);
  };
  for (const [key, value] of Object.entries(attributes)) {
    if (key === 'style') for (const [, name, part] of value.matchAll(/([\w-]+)\s*:([^;]*)/g)) add(name, idsIn(part));
    else if (key === 'href' || key.endsWith(':href')) {
      const href = value.trim();
      if (href.startsWith('#')) add('href', [safeId(href.slice(1))]);
    } else if (value.includes('url(')) add(key, idsIn(value));
  }
  return found;
}

/** The ids that a text refers to with `url(#id)`. */
export function idsIn(text: string): string[] {
  return [...text.matchAll(/url\(\s*(['"]?)#(.*?)\1\s*\)/g)].map((found) => safeId(found[2]));
}
