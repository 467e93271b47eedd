import { regionArea, regionBox, takeAway, type Region } from '../form/index.ts';
import { problem } from '../problem.ts';
import { area, lengths, say } from '../../words/say.ts';
import { near } from './proof/mend-shapes.ts';
import { innerPoint } from './raster/inner-point.ts';
import type { PointMm, Spot, Stencil, StencilRequest } from './types.ts';

/** About each fault, so far: first just the place, then a little of what is around it. */
const reachesMm = [1.8, 3] as const;
/** So near to an island a fault is of its bridges, or of the paper between. */
const besideMm = 3;
/** Unasked up to this share of the drawing; more is offered. */
const mostShare = 0.1;
/** So many faults are no few places. After so much work only few places are looked at, once, after still more none; and all together ends here. */
const mostFaults = 150,
  quickEffort = 60_000,
  fewFaults = 12,
  dearEffort = 90_000,
  mostEffort = 150_000;

/**
 * Where a stencil does not hold after all mending, what is too fine for the knife goes in small circles about its faults:
 * unasked and told where that is little, else as a way out that was tried. `meant`: what would print without any mending.
 */
export function withLeastLoss(
  request: StencilRequest,
  refused: Stencil,
  meant: Region,
  make: (request: StencilRequest) => Stencil,
): Stencil {
  const spots: Spot[] = [];
  let left = refused,
    effort = refused.effort;
  for (const withinMm of reachesMm) {
    const most = effort <= quickEffort ? mostFaults : left === refused && effort <= dearEffort ? fewFaults : 0;
    if (left.certificate.faults.length > most) break;
    spots.push(...left.certificate.faults.map((f) => ({ atMm: rounded(f.atMm), withinMm })));
    const there = { drops: [...(request.drops ?? []), ...spots], closings: [...(request.closings ?? []), ...spots] };
    left = make({ ...request, ...there, mostEffort: mostEffort - effort });
    effort += left.effort;
    if (!left.certificate.holds || left.problems.some((p) => p.severity === 'error')) continue;
    const more = takeAway(left.prints, refused.prints),
      less = takeAway(refused.prints, left.prints);
    if (lostMm2(left, meant) > mostShare * Math.min(regionArea(meant), regionArea(request.shape)))
      return { ...refused, effort, localLoss: { spots, more, less } };
    const told = problem(
      'warning',
      'stencil-coarser',
      request.place ?? '',
      say('stencil.coarser', { n: spots.length, first: lengths(spots[0].atMm, ',', 0), area: area(regionArea(more) + regionArea(less)) }),
      say('stencil.keepHairlines'),
    );
    return { ...left, effort, problems: [...left.problems, told] };
  }
  return { ...refused, effort };
}

/** Islands on bridges beside what does not hold. */
export function islandsBeside({ certificate, islands }: Stencil): Spot[] {
  return islands
    .filter(({ region, handled }) => handled === 'bridged' && certificate.faults.some(({ atMm }) => near(region, atMm, besideMm)))
    .map(({ region }) => ({ atMm: rounded(innerPoint(region, regionBox(region))) }));
}

/** What prints other than meant, bridges aside. */
function lostMm2({ prints, bridges }: Stencil, meant: Region): number {
  const bridged = bridges.reduce((sum, b) => sum + b.areaMm2, 0);
  return Math.max(0, regionArea(takeAway(meant, prints)) - bridged) + regionArea(takeAway(prints, meant));
}

const rounded = ([x, y]: PointMm): PointMm => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];
