import { regionBox } from '../../form/index.ts';
import type { Region } from '../../form/index.ts';
import { problem } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import { lengths, say, type Saying } from '../../../words/say.ts';
import type { Settled } from './settled.ts';
import type { Fault, PointMm } from '../types.ts';

/** What was mended and what is left, as problems. */
export function report(settled: Settled, prints: Region, place: string | Saying, material: Saying, problems: Problem[]): void {
  const { certificate, thickened, widened, closed, dropped } = settled;
  const spot = (at: PointMm) => lengths(at, ',', 0);
  if (thickened.length)
    problems.push(
      problem(
        'warning',
        'stencil-strengthened',
        place,
        say('stencil.strengthened', { n: thickened.length, material, first: spot(thickened[0]) }),
        say('stencil.keepFineParts'),
      ),
    );
  if (widened.length)
    problems.push(
      problem(
        'warning',
        'stencil-widened',
        place,
        say('stencil.widened', { n: widened.length, first: spot(widened[0]) }),
        say('stencil.lookOrEnlarge'),
      ),
    );
  const fine = (
    code: string,
    regions: readonly Region[],
    message: (values: { n: number; first: ReturnType<typeof spot> }) => Saying,
  ): void => {
    if (regions.length === 0) return;
    const box = regionBox(regions[0]);
    const first = spot([(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]);
    problems.push(problem('warning', code, place, message({ n: regions.length, first }), say('stencil.keepHairlines')));
  };
  fine('stencil-closed', closed, (values) => say('stencil.closed', values));
  fine('stencil-dropped', dropped, (values) => say('stencil.dropped', values));
  if (!certificate.holds) {
    const first = certificate.faults[0];
    problems.push(
      problem(
        'error',
        'stencil-does-not-hold',
        place,
        say('stencil.doesNotHold', { n: certificate.faults.length, first: spot(first.atMm), fault: faults[first.kind] }),
        say('stencil.mendFaults'),
      ),
    );
  }
  if (!prints.rings.length)
    problems.push(problem('error', 'stencil-prints-nothing', place, say('stencil.noOpeningLeft'), say('stencil.enlargeForm')));
}

const faults: Readonly<Record<Fault['kind'], Saying>> = {
  neck: say('stencil.neckTooThin'),
  'thin-piece': say('stencil.pieceTooThin'),
  tongue: say('stencil.pointTooThin'),
  opening: say('stencil.openingTooNarrow'),
  apart: say('stencil.partUnheld'),
};
