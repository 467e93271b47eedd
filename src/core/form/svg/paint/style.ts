/** What a style says that plain SVG says with attributes (SVG 2, chapter 8; CSS Transforms 1). */
export interface StyleRead {
  /** The style without what was moved. */
  readonly style: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Something in it could not be turned into an attribute. */
  readonly lost: boolean;
  readonly effects: boolean;
}

const sizes = new Set(['cx', 'cy', 'r', 'rx', 'ry', 'x', 'y', 'width', 'height']);
const angles: Readonly<Record<string, number>> = { deg: 1, rad: 180 / Math.PI, grad: 0.9, turn: 360 };

/** Sizes, places and transforms in a `style` attribute become attributes; effects (blur, shadow) are left out. */
export function readStyle(style: string): StyleRead {
  const kept: string[] = [];
  const attributes: Record<string, string> = {};
  let lost = false,
    effects = false,
    transform = '',
    origin: readonly number[] | undefined;
  for (const [, key, raw] of style.matchAll(/([\w-]+)\s*:\s*((?:"[^"]*"|'[^']*'|\([^)]*\)|[^;])*)/g)) {
    const name = key.toLowerCase(),
      value = raw.replace(/!important/i, '').trim();
    if (sizes.has(name)) {
      if (/^[-+.\de]+(px)?$/i.test(value)) attributes[name] = value.replace(/px$/i, '');
      else if (value !== 'auto') lost = true;
    } else if (name === 'd') {
      const path = /^path\(\s*(["'])(.*)\1\s*\)$/.exec(value);
      if (path) attributes['d'] = path[2];
      else lost = true;
    } else if (name === 'transform') {
      const plain = plainTransform(value);
      if (plain === undefined) lost = true;
      else transform = plain;
    } else if (name === 'transform-origin') {
      const numbers = value
        .split(/\s+/)
        .slice(0, 2)
        .map((v) => (/^[-+.\de]+(px)?$/i.test(v) ? Number.parseFloat(v) : Number.NaN));
      if (numbers.length === 2 && numbers.every(Number.isFinite)) origin = numbers;
      else lost = true;
    } else if (name === 'filter') effects = effects || value !== 'none';
    else kept.push(`${key}:${raw}`);
  }
  if (transform)
    attributes['transform'] = origin
      ? `translate(${origin.join(' ')}) ${transform} translate(${origin.map((v) => -v).join(' ')})`
      : transform;
  return { style: kept.join(';'), attributes, lost: lost && (transform !== '' || !origin), effects };
}

/** `rotate(45deg) translateX(3px)` as the transform attribute says it; undefined where it can't. */
function plainTransform(value: string): string | undefined {
  if (value === 'none') return '';
  const out: string[] = [];
  const rest = value.replace(/([a-zA-Z]+)\s*\(([^)]*)\)/g, (_, name: string, list: string) => {
    const numbers = list
      .split(/[\s,]+/)
      .filter(Boolean)
      .map((word) => {
        const found = /^([-+.\de]+?)(px|deg|rad|grad|turn)?$/i.exec(word);
        return found ? Number(found[1]) * (angles[found[2]?.toLowerCase()] ?? 1) : Number.NaN;
      });
    const [a, b = 0] = numbers;
    const plain: Readonly<Record<string, string>> = {
      translateX: `translate(${a} 0)`,
      translateY: `translate(0 ${a})`,
      scaleX: `scale(${a} 1)`,
      scaleY: `scale(1 ${a})`,
      translate: `translate(${a} ${b})`,
      scale: `scale(${numbers.join(' ')})`,
      rotate: `rotate(${a})`,
      skewX: `skewX(${a})`,
      skewY: `skewY(${a})`,
      matrix: `matrix(${numbers.join(' ')})`,
    };
    if (plain[name] === undefined || numbers.length === 0 || numbers.some((v) => !Number.isFinite(v))) return '?';
    out.push(plain[name]);
    return '';
  });
  return rest.trim() === '' && out.length > 0 ? out.join(' ') : undefined;
}

/** Colours that are wholly see-through in the newer way of writing (CSS Color 4, `rgb(0 0 0 / 0)`) as `none`. */
export function withoutClearColours(text: string): string {
  return text.replace(/(?:rgb|hsl)a?\([^()]*\/\s*0*(?:\.0*)?%?\s*\)/gi, 'none');
}

/** A style sheet without effects; `moves` where it sizes or moves shapes, which only attributes may do here. */
export function plainSheet(text: string): { readonly text: string; readonly moves: boolean; readonly effects: boolean } {
  const bare = text.replace(/\/\*[\s\S]*?\*\//g, '');
  const plain = bare.replace(/([{;]\s*)filter\s*:[^;}]*/gi, '$1');
  return { text: withoutClearColours(plain), moves: /[{;\s](?:cx|cy|r|rx|ry|d|transform)\s*:/i.test(bare), effects: plain !== bare };
}
