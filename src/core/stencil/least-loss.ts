import { regionArea, takeAway, type Region } from '../form/index.ts';
import { problem } from '../problem.ts';
import { area, lengths, say } from '../../words/say.ts';
import type { PointMm, Spot, Stencil, StencilRequest } from './types.ts';

/** About each fault, so far: first just the place, then a little of what is around it. */
const reachesMm = [1.8, 3] as const;
/** Unasked up to this share of the drawing; more is offered. */
const mostShare = 0.1;
/** So many faults are no few places, and so many points of outlines no quick look. */
const mostFaults = 150,
  mostEffort = 45_000;

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
    if (left.certificate.faults.length > mostFaults || effort > mostEffort) break;
    spots.push(...left.certificate.faults.map((f) => ({ atMm: rounded(f.atMm), withinMm })));
    left = make({ ...request, drops: [...(request.drops ?? []), ...spots], closings: [...(request.closings ?? []), ...spots] });
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

/** What prints other than meant, bridges aside. */
function lostMm2({ prints, bridges }: Stencil, meant: Region): number {
  const bridged = bridges.reduce((sum, b) => sum + b.areaMm2, 0);
  return Math.max(0, regionArea(takeAway(meant, prints)) - bridged) + regionArea(takeAway(prints, meant));
}

const rounded = ([x, y]: PointMm): PointMm => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];
