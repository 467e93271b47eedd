import { SaxesParser } from 'saxes';
import { figure, name as asName, say, type Saying } from '../../../../words/say.ts';
import { fail, problem, ProblemError } from '../../../problem.ts';
import type { Problem } from '../../../problem.ts';
import { fileAt } from '../../file-at.ts';
import { idsIn, ReferenceCount } from './count.ts';
import { safeId, withSafeIds } from './ids.ts';
import { plainSheet, readStyle, withoutClearColours } from '../paint/style.ts';

/** Nothing larger is read: a drawing of this size would not be cut by hand either. */
const mostCharacters = 20_000_000;
/** Groups within groups; far above any real drawing, far below what exhausts the stack. */
const mostDepth = 120;
/** Elements, and characters of their outlines, after everything that is referred to has been written out. */
const mostElements = 60_000;
const mostOutlineCharacters = 20_000_000;
/** No drawing program writes as many on one element. */
const mostAttributes = 500;
/** Every rule of a style sheet is held against every element. */
const mostMatches = 4_000_000;
/** By so many characters entities may lengthen a drawing. */
const mostGrowth = 2_000_000;
/** Declared by some programs though XML has them anyway (XML 1.0, section 4.6). */
const predefined = new Set(['amp', 'lt', 'gt', 'apos', 'quot']);
const mostEntities = 200;
const mostEntityCharacters = 2_000;

const svgNamespace = 'http://www.w3.org/2000/svg';
/** Left out together with what is inside them: they move, run, describe or belong to the program that wrote the file. */
const dropped = new Set([
  'script',
  'foreignObject',
  'animate',
  'animateMotion',
  'animateTransform',
  'animateColor',
  'set',
  'metadata',
  'title',
  'desc',
  'a:script',
  'handler',
  'audio',
  'video',
  'iframe',
  'canvas',
]);
const pictures = new Set(['image', 'feImage']);

export interface GuardedDrawing {
  /** Clean SVG: one namespace, no entities, no scripts, nothing from outside. */
  readonly text: string;
  readonly problems: readonly Problem[];
  /** Attributes of the outermost element. */
  readonly root: Readonly<Record<string, string>>;
}

const escapeText = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
const escapeAttribute = (text: string): string =>
  escapeText(text)
    .replace(/"/g, '&quot;')
    .replace(/[\n\t\r]/g, ' ');
const isElsewhere = (href: string): boolean => !href.startsWith('#');

/**
 * Reads an SVG text before any other code sees it: well-formed, of bearable size and depth, free of everything that
 * could reach out or run. Throws ProblemError for what cannot be cut (pictures, text in other than the `fonts` at hand, in small
 * letters) or read at all. `file`: its name, for messages.
 */
export function guardSvg(text: string, file: string, fonts: ReadonlySet<string> = new Set()): GuardedDrawing {
  const place = fileAt(file);
  if (text.length > mostCharacters) {
    fail(
      'drawing-too-large',
      place,
      say('form.tooManyCharacters', { size: figure(Math.ceil(text.length / 1e5) / 10, 1), most: mostCharacters / 1e6 }),
      say('form.simplify'),
    );
  }
  const warnings = new Map<string, Problem>();
  const warn = (code: string, message: Saying, advice: Saying): void => {
    if (!warnings.has(code)) warnings.set(code, problem('warning', code, place, message, advice));
  };
  const warnMoves = (): void => warn('drawing-moved-by-style', say('form.movedByStyle'), say('form.attributesForStyles'));
  const warnEffects = (): void => warn('drawing-has-effects', say('form.effects'), say('form.fineIfRight'));
  const warnElsewhere = (): void => warn('drawing-reaches-out', say('form.elsewhere'), say('form.allInside'));
  const errors = new Map<string, Problem>();
  const out: string[] = [];
  let root: Record<string, string> | undefined;
  let prefix = 'svg';
  let depth = 0;
  let skip = 0;
  let texts = 0;
  /** Fonts asked for, group by group. */
  const families: string[] = [''];
  let styles = 0;
  let hidden = 0;
  /** Texts and pictures in places that show only where something refers to them, with the ids that do. */
  const unseen: { readonly ids: readonly string[]; readonly found: Problem }[] = [];
  const referred = new Set<string>();
  const ids: string[] = [];
  const hides: boolean[] = [];
  const refer = (text: string): void => {
    for (const id of idsIn(text)) referred.add(id);
  };
  const refuse = (found: Problem): void => {
    if (hidden > 0) unseen.push({ ids: ids.filter(Boolean), found });
    else errors.set(found.code, found);
  };
  const count = new ReferenceCount();
  let elements = 0,
    attributesHere = 0,
    attributeCharacters = 0;
  const parser = new SaxesParser({ xmlns: false, position: true });
  const here = (): Saying => fileAt(file, parser.line);
  // XML's own entities are inherited by this object, so it must stay the same one.
  parser.ENTITIES['nbsp'] = '\u00a0';

  parser.on('error', () => {
    fail('drawing-not-svg', here(), say('form.svgBroken'), say('form.saveSvgAgain'));
  });
  parser.on('doctype', (doctype) => {
    const found = [...doctype.matchAll(/<!ENTITY\s+([\w.-]+)\s+(?:"([^"]*)"|'([^']*)')\s*>/g)].filter(([, name]) => !predefined.has(name));
    if (found.length > mostEntities || /<!ENTITY\s+%/.test(doctype)) refuseEntities(here());
    for (const [, name, double, single] of found) {
      const value = double ?? single ?? '';
      // Entities inside entities are how a small file becomes a huge one.
      if (/[&<%]/.test(value) || value.length > mostEntityCharacters) refuseEntities(here());
      parser.ENTITIES[name] = value;
    }
    if (/<!ENTITY\s+[\w.-]+\s+(SYSTEM|PUBLIC)/.test(doctype)) warnElsewhere();
  });
  parser.on('attribute', ({ value }) => {
    attributesHere++;
    attributeCharacters += value.length;
    if (attributesHere > mostAttributes)
      fail('drawing-too-large', here(), say('form.tooManyAttributes', { most: mostAttributes }), say('form.simplify'));
    if (attributeCharacters > text.length + mostGrowth) refuseEntities(here());
  });
  parser.on('opentag', (tag) => {
    attributesHere = 0;
    depth++;
    if (depth > mostDepth) fail('drawing-too-deep', here(), say('form.groupsTooDeep', { most: mostDepth }), say('form.ungroup'));
    const attributes = tag.attributes as Record<string, string>;
    if (!root) {
      for (const [key, value] of Object.entries(attributes)) if (key.startsWith('xmlns:') && value === svgNamespace) prefix = key.slice(6);
    }
    const name = tag.name.startsWith(`${prefix}:`) ? tag.name.slice(prefix.length + 1) : tag.name;
    if (!root && name !== 'svg')
      fail('drawing-not-svg', here(), say('form.beginsOtherwise', { tag: asName(tag.name.slice(0, 40)) }), say('form.saveSvg'));
    if (skip > 0 || dropped.has(name) || name.includes(':')) {
      skip++;
      if (skip === 1 && (name === 'script' || name === 'foreignObject'))
        warn('drawing-has-script', say('form.script'), say('form.fineIfRight'));
      if (skip === 1 && /^(animate|set)/.test(name)) warn('drawing-moves', say('form.moves'), say('form.fineIfRight'));
      return;
    }
    if (name === 'text' || name === 'tspan' || name === 'textPath') texts++;
    if (name === 'style') styles++;
    families.push(familyIn(attributes) ?? families[families.length - 1]);
    const own: Record<string, string> = {};
    for (const [key, value] of Object.entries(attributes)) own[key] = withSafeIds(withoutClearColours(value));
    if (own['id'] !== undefined) own['id'] = safeId(own['id']);
    const hidesOwn =
      name === 'defs' ||
      name === 'symbol' ||
      attributes['display'] === 'none' ||
      /(^|;)\s*display\s*:\s*none/i.test(attributes['style'] ?? '');
    if (hidesOwn) hidden++;
    hides.push(hidesOwn);
    ids.push(own['id'] ?? '');
    if (own['style'] !== undefined) {
      const read = readStyle(own['style']);
      own['style'] = read.style;
      Object.assign(own, read.attributes);
      if (read.lost) warnMoves();
      if (read.effects) warnEffects();
    }
    if (own['filter'] !== undefined) {
      if (own['filter'] !== 'none') warnEffects();
      delete own['filter'];
    }
    if (/non-scaling-stroke/.test(`${attributes['vector-effect'] ?? ''}${own['style'] ?? ''}`) || attributes['pathLength'] !== undefined) {
      warn('drawing-lines-plain', say('form.plainLines'), say('form.linesToShapes'));
    }
    const kept: string[] = [];
    for (const [key, value] of Object.entries(own)) {
      refer(value);
      const attribute = key === 'xlink:href' || key === `${prefix}:href` ? 'href' : key;
      if (attribute.includes(':') || attribute === 'xmlns' || /^on/i.test(attribute)) continue;
      if (attribute === 'href' && isElsewhere(value.trim()) && !pictures.has(name)) {
        if (name !== 'a') warnElsewhere();
        continue;
      }
      kept.push(
        ` ${attribute}="${escapeAttribute(attribute === 'href' && value.trim().startsWith('#') ? `#${safeId(value.trim().slice(1))}` : value)}"`,
      );
    }
    if (pictures.has(name)) {
      refuse(problem('error', 'drawing-has-picture', here(), say('form.pixels'), say('form.tracePixels')));
    }
    elements++;
    if (elements > mostElements)
      fail('drawing-too-large', here(), say('form.tooManyElements', { most: mostElements }), say('form.simplify'));
    count.openTag(name, own);
    const href = (attributes.href ?? attributes['xlink:href'] ?? '').trim();
    if (href.startsWith('#')) referred.add(safeId(href.slice(1)));
    if (!root) {
      root = Object.fromEntries(Object.entries(attributes).filter(([key]) => !key.includes(':')));
      out.push(`<svg xmlns="${svgNamespace}"`, ...kept, '>');
    } else out.push(`<${name}`, ...kept, '>');
  });
  parser.on('closetag', (tag) => {
    depth--;
    if (skip > 0) {
      skip--;
      return;
    }
    const name = tag.name.startsWith(`${prefix}:`) ? tag.name.slice(prefix.length + 1) : tag.name;
    if (name === 'text' || name === 'tspan' || name === 'textPath') texts--;
    families.pop();
    if (name === 'style') styles--;
    if (hides.pop()) hidden--;
    ids.pop();
    count.closeTag();
    out.push(`</${name}>`);
  });
  const takeText = (content: string): void => {
    if (skip > 0 || !root) return;
    const family = families[families.length - 1];
    if (texts > 0 && content.trim() && !fonts.has(family)) {
      refuse(
        problem(
          'error',
          'drawing-has-text',
          here(),
          family === ''
            ? say('form.text', { text: asName(content.trim().slice(0, 30)) })
            : say('form.textInFont', { text: asName(content.trim().slice(0, 30)), font: asName(family.slice(0, 60)) }),
          say('form.textToOutlinesFirst'),
        ),
      );
    }
    if (/@import|url\(\s*['"]?(?!#|['"#])/.test(content)) warnElsewhere();
    if (styles === 0) {
      out.push(escapeText(content));
      return;
    }
    const sheet = plainSheet(content.replace(/@import[^;]*;/g, ''));
    if (sheet.moves) warnMoves();
    if (sheet.effects) warnEffects();
    const safe = withSafeIds(sheet.text);
    refer(safe);
    count.sheet(safe);
    out.push(escapeText(safe));
  };
  parser.on('text', takeText);
  parser.on('cdata', takeText);
  parser.write(text.replace(/^\ufeff/, '').replace(/^\s+(?=<)/, '')).close();
  if (!root) fail('drawing-not-svg', place, say('form.noDrawing'), say('form.saveSvg'));

  const { elements: written, characters } = count.expanded();
  if (written > mostElements || characters > mostOutlineCharacters)
    fail('drawing-too-large', place, say('form.tooManyElementsRepeated', { most: mostElements }), say('form.fewerRepeats'));
  if (count.matches() > mostMatches) fail('drawing-too-large', place, say('form.tooManyRules'), say('form.attributesForStyles'));
  for (const { ids: around, found } of unseen) if (around.some((id) => referred.has(id))) errors.set(found.code, found);
  if (errors.size) throw new ProblemError([...errors.values()]);
  return { text: out.join(''), problems: [...warnings.values()], root };
}

/** The first font that an element names, in small letters; a list of several in one `font` counts by its last word. */
function familyIn(attributes: Readonly<Record<string, string>>): string | undefined {
  const style = attributes['style'] ?? '';
  const named = /(?:^|;)\s*font-family\s*:\s*([^;]*)/i.exec(style)?.[1] ?? attributes['font-family'];
  const short = /(?:^|;)\s*font\s*:[^;]*?\d[\w.%]*(?:\/\S+)?\s+([^;]*)/i.exec(style)?.[1];
  return (named ?? short)?.split(',')[0].replace(/["']/g, '').trim().toLowerCase();
}

function refuseEntities(place: Saying): never {
  fail('drawing-has-entities', place, say('form.hidesContents'), say('form.saveSvgAgain'));
}
