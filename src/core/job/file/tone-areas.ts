type Raw = Record<string, unknown>;

const areaId = 'tone-area';

/**
 * A run of tone that names no cut lies on the whole image: it gets one that says so. Anything that is not as a job should be is left
 * for the schema to tell.
 */
export function withToneAreas(document: Raw): Raw {
  const { layers, forms = [], cuts = [], image } = document;
  const isRaw = (value: unknown): value is Raw => typeof value === 'object' && value !== null;
  if (!Array.isArray(layers) || !Array.isArray(forms) || !Array.isArray(cuts) || !isRaw(image)) return document;
  const lacks = (layer: unknown): layer is Raw => isRaw(layer) && isRaw(layer['tone']) && layer['cut'] === undefined;
  if (!layers.some(lacks)) return document;
  const [width, height] = [image['widthMm'], image['heightMm']];
  if (typeof width !== 'number' || typeof height !== 'number') return document;
  const has = (list: readonly unknown[]): boolean => list.some((one) => isRaw(one) && one['id'] === areaId);
  const form = { id: areaId, name: areaId, made: { kind: 'flat', widthMm: width, heightMm: height } };
  const cut = { id: areaId, name: areaId, parts: [{ form: areaId, xMm: width / 2, yMm: height / 2 }] };
  return {
    ...document,
    forms: has(forms) ? forms : [...(forms as unknown[]), form],
    cuts: has(cuts) ? cuts : [...(cuts as unknown[]), cut],
    layers: layers.map((layer: unknown) => (lacks(layer) ? { side: 'window', ...layer, cut: areaId } : layer)),
  };
}
