import { boxRegion, readPathData, regionBox, takeAway, tidy } from '../form/index.ts';
import { certify } from './certificate.ts';
import type { Material } from './materials.ts';
import type { Certificate, Stencil } from './types.ts';

/**
 * The certificate of a stencil as its file says it: `d` is the text of the closed knife paths just as written (absolute
 * M, L, C, Z, in mm). Nothing that does not hold should leave; `faults` say where.
 */
export function certifyWritten(d: string, stencil: Stencil, material: Material): Certificate {
  if (!d.trim()) return stencil.certificate;
  const cut = readPathData(d);
  // Between the knife paths paper and opening take turns, beginning with paper at the sheet's edge.
  const paper = tidy([...boxRegion(stencil.sheet).rings, ...cut.rings], 'even-odd');
  const openings = takeAway(boxRegion(stencil.sheet), paper);
  return certify(paper, stencil.sheet, regionBox(openings), material, stencil.loosePieces.length);
}
