import { say, type Saying } from '../../../../words/say.ts';
import { fail } from '../../../problem.ts';
import { seeded } from '../../../random.ts';

/** Uniting shapes takes time for every crossing; as many as this take seconds. */
const mostCrossings = 3_000_000;
/** And, for every height at which a point lies, for every edge that passes there. */
const mostPassing = 60_000_000;
/** Fewer points can't cross so often that it matters. */
const fewPoints = 4000;
const mostLooks = 200_000,
  fewestLooks = 2000;
/** So many crossings are seen where there are just too many. */
const seenAtLimit = 30;

/** Throws where uniting these rings would take longer than anyone waits. */
export function refuseTangle(rings: readonly Float64Array[], place: Saying): void {
  if (isTangled(rings)) fail('drawing-tangled', place, say('form.tangled'), say('form.simplifyOutlines'));
}

/**
 * Do the edges of these rings cross one another millions of times? Judged from pairs of edges drawn at random (seeded): a
 * tangle of that size shows at once, and nothing a knife could follow comes near it.
 */
function isTangled(rings: readonly Float64Array[]): boolean {
  let edges = 0;
  const starts = rings.map((ring) => {
    const start = edges;
    edges += ring.length / 2;
    return start;
  });
  if (edges < fewPoints) return false;
  if (passing(rings, edges) > mostPassing) return true;
  const random = seeded(7);
  const one = new Float64Array(4),
    two = new Float64Array(4);
  const pick = (into: Float64Array): void => {
    const at = Math.floor(random.next() * edges);
    let low = 0,
      high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle] <= at) low = middle;
      else high = middle - 1;
    }
    const ring = rings[low],
      i = 2 * (at - starts[low]),
      j = i + 2 < ring.length ? i + 2 : 0;
    into[0] = ring[i];
    into[1] = ring[i + 1];
    into[2] = ring[j];
    into[3] = ring[j + 1];
  };
  const looks = Math.min(mostLooks, Math.max(fewestLooks, Math.ceil((seenAtLimit * edges * edges) / 2 / mostCrossings)));
  let crossing = 0;
  for (let k = 0; k < looks; k++) {
    pick(one);
    pick(two);
    if (cross(one, two)) crossing++;
  }
  return crossing >= 3 && (crossing / looks) * (edges / 2) * edges > mostCrossings;
}

/** Heights (whole microns) at which points lie, times the edges that pass a height in the mean. */
function passing(rings: readonly Float64Array[], edges: number): number {
  let low = Infinity,
    high = -Infinity,
    climbed = 0;
  for (const ring of rings) {
    for (let i = 1, before = ring[ring.length - 1]; i < ring.length; i += 2) {
      const y = ring[i];
      climbed += Math.abs(y - before);
      before = y;
      if (y < low) low = y;
      if (y > high) high = y;
    }
  }
  const tall = Math.max(high - low, 0.001);
  return Math.min(edges, tall * 1000) * (climbed / tall);
}

function cross(one: Float64Array, two: Float64Array): boolean {
  return apart(one, two) && apart(two, one);
}

/** Do the ends of the second lie on either side of the first? */
function apart(line: Float64Array, ends: Float64Array): boolean {
  const dx = line[2] - line[0],
    dy = line[3] - line[1];
  const from = dx * (ends[1] - line[1]) - dy * (ends[0] - line[0]),
    to = dx * (ends[3] - line[1]) - dy * (ends[2] - line[0]);
  return from * to < 0;
}
