import { currentSchemaVersion } from './schema/limits.ts';
import type { JobInk } from './schema/schema.ts';

/** What the smallest job calls its things, in the printmaker's language. */
export interface BeginNames {
  readonly title: string;
  readonly form: string;
  readonly first: string;
  readonly second: string;
  readonly paper: string;
  readonly stock: string;
  readonly note: string;
}

/**
 * The document of the smallest job that plans: one form, two runs from one cut (what drops out of the window is the piece of
 * the other), two inks of the starter shelf and a base, one paper. Only fields that one touches first; their names carry the unit.
 */
export function beginJob(names: BeginNames, inks: readonly JobInk[]): Record<string, unknown> {
  const [below, above] = inks.filter((ink) => ink.role !== 'transparent-base');
  const base = inks.find((ink) => ink.role === 'transparent-base');
  return {
    schemaVersion: currentSchemaVersion,
    title: names.title,
    units: 'mm',
    note: names.note,
    image: { widthMm: 120, heightMm: 160 },
    stencilMarginMm: 30,
    materials: [{ id: 'stock', name: names.stock, thicknessMm: 0.11, leastBridgeMm: 2, leastOpeningMm: 1, prints: [20, 50] }],
    forms: [{ id: 'hill', name: names.form, outline: [hill()] }],
    cuts: [{ id: 'hill', name: names.form, material: 'stock', parts: [{ form: 'hill', xMm: 60, yMm: 110 }] }],
    layers: [
      { id: 'below', name: names.first, cut: 'hill', side: 'window', ink: below.id, strength: 0.6, base: base?.id },
      { id: 'above', name: names.second, cut: 'hill', side: 'piece', ink: (above ?? below).id, strength: 0.4, base: base?.id },
    ],
    inks,
    papers: [
      {
        id: 'paper',
        name: names.paper,
        reading: { kind: 'lab', lab: [95, 0, 2], sigma: 3 },
        widthMm: 210,
        heightMm: 297,
        count: 12,
        thicknessMm: 0.1,
      },
    ],
    screen: { insideWidthMm: 300, insideHeightMm: 400, mesh: { perCm: 77, threadMicrons: 48 } },
    edition: { target: 5 },
  };
}

/** A hill with a hollow in its flank, from edge to edge of the image: 120 × 100 mm. */
function hill(): [number, number][] {
  const crest = Array.from({ length: 41 }, (_, i): [number, number] => {
    const t = i / 40;
    const y = 46 - 34 * Math.sin(Math.PI * t) ** 2 - 8 * Math.sin(3 * Math.PI * t);
    return [120 * t, Math.round(y * 100) / 100];
  });
  return [...crest, [120, 100], [0, 100]];
}
