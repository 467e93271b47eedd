import { boxRegion, fitOutline, outlineData, readPathData, tidy } from '../form/index.ts';
import type { FitRules, Region, Segment } from '../form/index.ts';
import { certify, cutOrder, type Certificate, type Material, type Stencil } from '../stencil/index.ts';

/** What is written of a stencil. */
export type StencilLines = Pick<Stencil, 'cutLines' | 'sheet' | 'loosePieces' | 'certificate'>;

/**
 * The certificate of a stencil as its file says it: `d` is the text of the closed knife paths just as written (absolute
 * M, L, C, Z, in mm). Nothing that does not hold should leave; `faults` say where.
 */
export function certifyWritten(d: string, stencil: StencilLines, material: Material): Certificate {
  if (!d.trim()) return stencil.certificate;
  const cut = readPathData(d);
  // Between the knife paths paper and opening take turns, beginning with paper at the sheet's edge.
  const paper = tidy([...boxRegion(stencil.sheet).rings, ...cut.rings], 'even-odd');
  return certify(paper, stencil.sheet, material, stencil.loosePieces.length);
}

/** Knife paths as they go into a file, and the proof of just that. */
export interface WrittenPaths {
  readonly outlines: readonly (readonly Segment[])[];
  /** The `d` of an SVG path, mm. */
  readonly data: string;
  readonly certificate: Certificate;
}

/** Few nodes first; where that would not hold, nearer to the outline. */
const fits: readonly FitRules[] = [0.03, 0.015, 0.006].map((toleranceMm) => ({ toleranceMm, cornerDeg: 32 }));

/**
 * The knife paths `paths` of a stencil as text: with curves and few nodes where that is proven to hold, else nearer to the
 * outline, at last point by point. In the order in which to cut them, inner ones first. If `certificate` does not hold even then, the paths must not leave.
 */
export function writePaths(paths: Region, stencil: StencilLines, material: Material): WrittenPaths {
  const written = (outlines: readonly (readonly Segment[])[]): WrittenPaths => {
    const data = outlineData(outlines);
    return { outlines, data, certificate: certifyWritten(data, stencil, material) };
  };
  const ordered: Region = { rings: cutOrder(paths).map((i) => paths.rings[i]) };
  // What was not proven before it was written is drawn as it is: writing makes it no better.
  if (!stencil.certificate.holds) {
    const outlines = fitOutline(ordered, fits[0]);
    return { outlines, data: outlineData(outlines), certificate: stencil.certificate };
  }
  for (const rules of fits) {
    const fitted = written(fitOutline(ordered, rules));
    if (fitted.certificate.holds) return fitted;
  }
  return written(
    ordered.rings.map((ring) =>
      Array.from(
        { length: ring.length / 2 },
        (_, i): Segment => ({ kind: i === 0 ? 'move' : 'line', points: [ring[i * 2], ring[i * 2 + 1]] }),
      ),
    ),
  );
}
