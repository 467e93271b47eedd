/** One entity of a DXF file: its group codes and values, and how its own frame lies in the drawing. */
export interface Entity {
  readonly kind: string;
  readonly codes: readonly (readonly [number, string])[];
}

/** [a b c d e f]: x' = a x + c y + e, y' = b x + d y + f. */
type Frame = readonly [number, number, number, number, number, number];

export interface Placed {
  readonly entity: Entity;
  readonly frame: Frame;
}

type Pairs = readonly (readonly [number, string])[];

const mostPlaced = 200_000,
  // Blocks put down, empty ones too: arrays in arrays multiply.
  mostInserts = 400_000,
  mostDepth = 20;
const plain: Frame = [1, 0, 0, 1, 0, 0];

/** Entities of the model (not of paper layouts), on layers that are switched on; blocks written out where they are inserted. */
export function entitiesOf(pairs: Pairs): { readonly placed: Placed[]; readonly tooMany: boolean } {
  const off = layersOff(pairs);
  const blocks = blocksOf(pairs);
  const placed: Placed[] = [];
  let tooMany = false,
    inserts = 0;
  const visit = (list: readonly Entity[], frame: Frame, depth: number): void => {
    for (const entity of list) {
      if (tooMany || placed.length >= mostPlaced || depth > mostDepth) {
        tooMany = true;
        return;
      }
      if (number(entity, 67, 0) === 1 || off.has(word(entity, 8))) continue;
      const block = entity.kind === 'INSERT' ? blocks.get(word(entity, 2)) : undefined;
      const own = chain(frame, seenFrom(entity));
      if (!block) placed.push({ entity, frame: own });
      else
        for (const step of steps(entity)) {
          if (tooMany || ++inserts > mostInserts) {
            tooMany = true;
            return;
          }
          visit(block.entities, chain(own, chain(step, [1, 0, 0, 1, -block.x, -block.y])), depth + 1);
        }
    }
  };
  visit(joinVertices(section(pairs, 'ENTITIES')), plain, 0);
  return { placed, tooMany };
}

/** Points of a path moved into the drawing. */
export function mapPath(path: readonly number[], [a, b, c, d, e, f]: Frame): number[] {
  const out: number[] = [];
  for (let i = 0; i < path.length; i += 2) out.push(a * path[i] + c * path[i + 1] + e, b * path[i] + d * path[i + 1] + f);
  return out;
}

export const growthOf = ([a, b, c, d]: Frame): number => Math.sqrt(Math.abs(a * d - b * c));

const number = (entity: Entity, code: number, usual: number): number => Number(entity.codes.find(([c]) => c === code)?.[1] ?? usual);
const word = (entity: Entity, code: number): string => entity.codes.find(([c]) => c === code)?.[1] ?? '';

function chain([a, b, c, d, e, f]: Frame, [g, h, i, j, k, l]: Frame): Frame {
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

/** Arcs, circles, polylines and inserts that were mirrored are seen from behind: their x runs the other way (extrusion 0, 0, −1). */
function seenFrom(entity: Entity): Frame {
  const fromBehind = ['ARC', 'CIRCLE', 'LWPOLYLINE', 'INSERT'].includes(entity.kind) && number(entity, 230, 1) < 0;
  return fromBehind ? [-1, 0, 0, 1, 0, 0] : plain;
}

/** Where an insert puts its block: once, or in rows and columns. */
function* steps(insert: Entity): Generator<Frame> {
  const angle = (number(insert, 50, 0) * Math.PI) / 180,
    cos = Math.cos(angle),
    sin = Math.sin(angle);
  const sx = number(insert, 41, 1),
    sy = number(insert, 42, 1),
    x = number(insert, 10, 0),
    y = number(insert, 20, 0);
  const columns = Math.max(1, Math.min(1000, number(insert, 70, 1))),
    rows = Math.max(1, Math.min(1000, number(insert, 71, 1)));
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const u = column * number(insert, 44, 0),
        v = row * number(insert, 45, 0);
      yield [cos * sx, sin * sx, -sin * sy, cos * sy, x + cos * u - sin * v, y + sin * u + cos * v];
    }
  }
}

/** Entities of a section in the order of the file. */
function section(pairs: Pairs, name: string): Entity[] {
  const start = pairs.findIndex(([code, value], i) => code === 2 && value === name && pairs[i - 1]?.[1] === 'SECTION');
  const out: Entity[] = [];
  if (start < 0) return out;
  let codes: [number, string][] = [];
  for (let i = start + 1; i < pairs.length; i++) {
    const [code, value] = pairs[i];
    if (code !== 0) {
      codes.push([code, value]);
      continue;
    }
    if (value === 'ENDSEC') break;
    codes = [];
    out.push({ kind: value, codes });
  }
  return out;
}

/** Old polylines: their vertices follow as entities of their own; those of a spline's frame are no points of it. */
function joinVertices(list: readonly Entity[]): Entity[] {
  const joined: Entity[] = [];
  for (let i = 0; i < list.length; i++) {
    if (list[i].kind !== 'POLYLINE') {
      joined.push(list[i]);
      continue;
    }
    const codes = list[i].codes.filter(([code]) => [8, 67, 70, 230].includes(code));
    for (i++; i < list.length && list[i].kind === 'VERTEX'; i++) {
      if (!(number(list[i], 70, 0) & 16)) codes.push(...list[i].codes.filter(([code]) => code === 10 || code === 20 || code === 42));
    }
    if (list[i] && list[i].kind !== 'SEQEND') i--;
    joined.push({ kind: 'LWPOLYLINE', codes });
  }
  return joined;
}

interface Block {
  readonly x: number;
  readonly y: number;
  readonly entities: readonly Entity[];
}

function blocksOf(pairs: Pairs): Map<string, Block> {
  const blocks = new Map<string, Block>();
  let open: Entity | undefined,
    inside: Entity[] = [];
  for (const entity of section(pairs, 'BLOCKS')) {
    if (entity.kind === 'BLOCK') {
      open = entity;
      inside = [];
    } else if (entity.kind === 'ENDBLK') {
      if (open) blocks.set(word(open, 2), { x: number(open, 10, 0), y: number(open, 20, 0), entities: joinVertices(inside) });
      open = undefined;
    } else inside.push(entity);
  }
  return blocks;
}

/** Layers that are frozen (bit 1 of group 70) or off (a colour below zero). */
function layersOff(pairs: Pairs): Set<string> {
  const found = section(pairs, 'TABLES').filter((e) => e.kind === 'LAYER' && ((number(e, 70, 0) & 1) === 1 || number(e, 62, 7) < 0));
  return new Set(found.map((e) => word(e, 2)));
}
