import { chainsOfLayer, type Arc, type Leg } from './trace.ts';

/** A step of the raster reaches so far into a long straight run, px: farther from its ends a run lies where it seems to. */
const stepReach = 4;
/** Two runs at least so long that meet make a corner of the picture: a straight line on a raster has steps of one pixel in one direction. */
const leastRun = 3;
/** Taubin 1995: one step that shrinks, one that grows again, so that rings keep their size. */
const shrink = 0.5,
  grow = -0.525,
  rounds = 24;
/** No point goes farther from where the raster has it, px. */
const mostMove = 0.75;
/** So long an edge that layers have in common stays in common, px. Where edges only nearly meet they part and join at every step of the raster. */
const leastShared = 12;

/** A stretch of a ring: points x0, y0, … in pixels, and whether the ring takes them that way round. */
export interface Stretch {
  readonly points: Float64Array;
  readonly forward: boolean;
}

/**
 * Outlines without the raster's stairs. Every layer's rings are calmed as wholes; where edges meet, the meeting point moves too, by the
 * mean of what the rings ask for that have an edge in common there.
 * @returns for each layer its rings, each as stretches in turn. What several rings have in common is one array for all of them.
 */
export function calmRings(arcs: readonly Arc[], width: number, height: number, layers: number): Stretch[][][] {
  const net = new Net(arcs, width, height);
  const rings = Array.from({ length: layers }, (_, layer) => chainsOfLayer(arcs, layer, width).map((chain) => net.ring(chain)));
  net.calm();
  return rings.map((of) => of.map((ways) => ways.map(({ way, forward }) => ({ points: net.pointsOf(way), forward }))));
}

/** Points of a stretch by their numbers; a closed one comes back to its first. */
interface Way {
  readonly ids: Int32Array;
  /** Along the image's border, where nothing is cut but the straight. */
  readonly border: boolean;
}

interface Taken {
  readonly way: Way;
  readonly forward: boolean;
}

class Net {
  private readonly at: number[] = [];
  /** 1: stays; 2: slides along x; 3: slides along y. */
  private readonly held: number[] = [];
  /** Points that are one: the number of another of them, or its own. */
  private readonly same: number[] = [];
  /** Points before and after a point on a ring that passes through it: point, before, after. */
  private readonly passes: number[] = [];
  private readonly common: (Way | undefined)[];
  private readonly done = new Map<Way, Float64Array>();
  private now = new Float64Array();

  private readonly arcs: readonly Arc[];
  private readonly width: number;
  private readonly height: number;

  constructor(arcs: readonly Arc[], width: number, height: number) {
    this.arcs = arcs;
    this.width = width;
    this.height = height;
    this.common = arcs.map(() => undefined);
  }

  /** A ring of a layer: long edges as everyone takes them, what lies between them its own. */
  ring(chain: readonly Leg[]): Taken[] {
    const first = Math.max(
      0,
      chain.findIndex((leg) => this.isCommon(leg.arc)),
    );
    const groups: Leg[][] = [];
    for (const leg of [...chain.slice(first), ...chain.slice(0, first)]) {
      const last = groups.at(-1);
      if (last && !this.isCommon(leg.arc) && !this.isCommon(last[0].arc)) last.push(leg);
      else groups.push([leg]);
    }
    const taken = groups.map((legs): Taken => {
      const { arc, forward } = legs[0];
      if (this.isCommon(arc)) return { way: (this.common[arc] ??= this.laid(this.arcs[arc].points, this.arcs[arc].closed)), forward };
      return { way: this.laid(this.cornersOf(legs), groups.length === 1), forward: true };
    });
    if (taken.length === 1 && closes(taken[0].way)) return taken;
    taken.forEach((one, k) => {
      const other = taken[(k + 1) % taken.length];
      const [before, end] = lastOf(one),
        [after, start] = lastOf({ ...other, forward: !other.forward });
      this.join(end, start);
      if (!one.way.border && !other.way.border) this.passes.push(end, before, after);
      // Where an edge runs off the image it would rather do so squarely.
      else if (!one.way.border) this.passes.push(end, before, before);
      else if (!other.way.border) this.passes.push(start, after, after);
    });
    return taken;
  }

  calm(): void {
    const { held } = this,
      n = held.length;
    const passes = Int32Array.from(this.passes, (id) => this.find(id));
    const first = Float64Array.from(this.at),
      now = first.slice(),
      move = new Float64Array(2 * n),
      count = new Uint16Array(n);
    for (let w = 0; w < passes.length; w += 3) count[passes[w]]++;
    for (let round = 0; round < 2 * rounds; round++) {
      move.fill(0);
      for (let w = 0; w < passes.length; w += 3) {
        const to = 2 * passes[w],
          a = 2 * passes[w + 1],
          b = 2 * passes[w + 2];
        move[to] += (now[a] + now[b]) / 2 - now[to];
        move[to + 1] += (now[a + 1] + now[b + 1]) / 2 - now[to + 1];
      }
      const by = round % 2 === 0 ? shrink : grow;
      for (let i = 0; i < n; i++) {
        if (count[i] === 0 || held[i] === 1) continue;
        let x = now[2 * i] + (held[i] === 3 ? 0 : (by * move[2 * i]) / count[i]) - first[2 * i],
          y = now[2 * i + 1] + (held[i] === 2 ? 0 : (by * move[2 * i + 1]) / count[i]) - first[2 * i + 1];
        const far = Math.hypot(x, y);
        if (far > mostMove) {
          x *= mostMove / far;
          y *= mostMove / far;
        }
        now[2 * i] = first[2 * i] + x;
        now[2 * i + 1] = first[2 * i + 1] + y;
      }
    }
    this.now = now;
  }

  pointsOf(way: Way): Float64Array {
    let points = this.done.get(way);
    if (points) return points;
    points = new Float64Array(2 * way.ids.length);
    way.ids.forEach((id, k) => {
      const from = 2 * this.find(id);
      points![2 * k] = this.now[from];
      points![2 * k + 1] = this.now[from + 1];
    });
    this.done.set(way, points);
    return points;
  }

  private isCommon(arc: number): boolean {
    const { points, closed } = this.arcs[arc];
    return closed || points.length / 2 > leastShared || onBorder(points, this.width, this.height);
  }

  /** Pixel corners along several legs in turn. */
  private cornersOf(legs: readonly Leg[]): Int32Array {
    const out: number[] = [];
    for (const { arc, forward } of legs) {
      const { points } = this.arcs[arc];
      for (let k = out.length > 0 ? 1 : 0; 2 * k < points.length; k++) {
        const at = forward ? 2 * k : points.length - 2 - 2 * k;
        out.push(points[at], points[at + 1]);
      }
    }
    return Int32Array.from(out);
  }

  /** Points at even distances along a way of pixel corners. */
  private laid(points: Int32Array, closed: boolean): Way {
    const border = onBorder(points, this.width, this.height),
      last = points.length - 2;
    const way = border ? [points[0], points[1], points[last], points[last + 1]] : evenly(withoutSteps(points, closed));
    const n = way.length / 2 - (closed ? 1 : 0);
    const ids = Array.from({ length: n }, (_, k) => this.add(way[2 * k], way[2 * k + 1], !closed && (k === 0 || k === n - 1)));
    if (closed) ids.push(ids[0]);
    if (!border) for (let k = closed ? 0 : 1; k < n - (closed ? 0 : 1); k++) this.passes.push(ids[k], ids[(k + n - 1) % n], ids[k + 1]);
    return { ids: Int32Array.from(ids), border };
  }

  private add(x: number, y: number, end: boolean): number {
    const side = end && (x === 0 || x === this.width),
      top = end && (y === 0 || y === this.height);
    this.at.push(x, y);
    this.held.push(side && top ? 1 : top ? 2 : side ? 3 : 0);
    return this.same.push(this.same.length) - 1;
  }

  private find(id: number): number {
    const { same } = this;
    while (same[id] !== id) id = same[id] = same[same[id]];
    return id;
  }

  private join(one: number, other: number): void {
    const a = this.find(one),
      b = this.find(other);
    this.same[Math.max(a, b)] = Math.min(a, b);
  }
}

const closes = ({ ids }: Way): boolean => ids[0] === ids[ids.length - 1];

/** The last point but one and the last, as the ring goes. */
function lastOf({ way: { ids }, forward }: Taken): [number, number] {
  const n = ids.length;
  return forward ? [ids[n - 2], ids[n - 1]] : [ids[1], ids[0]];
}

/**
 * The middles of the straight runs of pixel edges instead of their ends: those of a straight line on a raster lie on the line.
 * A run much longer than a step keeps its place farther in, and what is a corner stays one. Open ways keep their ends.
 */
function withoutSteps(points: Int32Array, closed: boolean): number[] {
  const corners = cornersOf(points, closed);
  const n = corners.length / 2,
    runs = closed ? n : n - 1;
  const length = (i: number): number => {
    const a = ((i + runs) % runs) * 2,
      b = ((((i + runs) % runs) + 1) % n) * 2;
    return Math.abs(corners[b] - corners[a]) + Math.abs(corners[b + 1] - corners[a + 1]);
  };
  const isCorner = (before: number, after: number): boolean => length(before) >= leastRun && length(after) >= leastRun;
  const out: number[] = [];
  if (!closed) out.push(corners[0], corners[1]);
  for (let i = 0; i < runs; i++) {
    const [ax, ay] = [corners[2 * i], corners[2 * i + 1]],
      j = ((i + 1) % n) * 2,
      long = length(i);
    const along = (px: number): void => {
      out.push(ax + ((corners[j] - ax) * px) / long, ay + ((corners[j + 1] - ay) * px) / long);
    };
    const opens = !closed && i === 0,
      ends = !closed && i === runs - 1;
    if (!opens && isCorner(i - 1, i)) along(0);
    if (long > 2 * stepReach) {
      along(stepReach);
      along(long - stepReach);
    } else along(long / 2);
    if (ends) out.push(corners[j], corners[j + 1]);
  }
  if (closed) out.push(out[0], out[1]);
  return out;
}

/** Where the way turns; of an open one its ends too. A closed one does not come back to its first. */
function cornersOf(points: Int32Array, closed: boolean): number[] {
  const n = points.length / 2 - (closed ? 1 : 0);
  const out: number[] = [];
  for (let i = 0; i < n; i++) {
    const a = closed ? (i + n - 1) % n : i - 1,
      b = closed ? (i + 1) % n : i + 1;
    const straight =
      a >= 0 &&
      b < n &&
      points[2 * i] - points[2 * a] === points[2 * b] - points[2 * i] &&
      points[2 * i + 1] - points[2 * a + 1] === points[2 * b + 1] - points[2 * i + 1];
    if (!straight) out.push(points[2 * i], points[2 * i + 1]);
  }
  return out;
}

/** The same way with a point about every pixel, ends kept; at least one between them. */
function evenly(way: readonly number[]): number[] {
  const far = [0];
  for (let i = 2; i < way.length; i += 2) far.push(far[far.length - 1] + Math.hypot(way[i] - way[i - 2], way[i + 1] - way[i - 1]));
  const total = far[far.length - 1],
    pieces = Math.max(2, Math.round(total));
  const out = [way[0], way[1]];
  for (let k = 1, i = 1; k < pieces; k++) {
    const at = (total * k) / pieces;
    while (far[i] < at) i++;
    const t = far[i] > far[i - 1] ? (at - far[i - 1]) / (far[i] - far[i - 1]) : 0;
    out.push(way[2 * i - 2] + (way[2 * i] - way[2 * i - 2]) * t, way[2 * i - 1] + (way[2 * i + 1] - way[2 * i - 1]) * t);
  }
  out.push(way[way.length - 2], way[way.length - 1]);
  return out;
}

function onBorder(p: Int32Array, width: number, height: number): boolean {
  const all = (axis: number, value: number): boolean => {
    for (let i = axis; i < p.length; i += 2) if (p[i] !== value) return false;
    return true;
  };
  return all(0, 0) || all(0, width) || all(1, 0) || all(1, height);
}
