import { solveDamped } from '../../numeric/index.ts';

/**
 * How much each pixel belongs to the thing on the paper: 0 paper, 1 the thing, outline at ½. `rgb` in linear light.
 *
 * Light on the paper is seldom even: paper's own colour is taken per tile (its bright 90 % point) and filled in between.
 * First guess: darker than a shadow can be, or of another colour than paper and its shadow. Then, along the edge of
 * the guess, half way between paper and thing as they are found close by marks the edge, for pale things and in shadow too.
 */
export function objectField(
  rgb: Float32Array,
  width: number,
  height: number,
  border: number,
  darkShare: number,
  colourShare: number,
): Float32Array {
  const relative = toPaper(rgb, width, height);
  const n = width * height;
  const guess = new Uint8Array(n);
  const mean = [0, 0, 0];
  let count = 0;
  for (let y = border; y < height - border; y++) {
    for (let x = border; x < width - border; x++) {
      const p = y * width + x,
        r = relative[3 * p],
        g = relative[3 * p + 1],
        b = relative[3 * p + 2];
      const most = Math.max(r, g, b),
        bright = (r + g + b) / 3;
      if (bright < darkShare || (most > 0.02 && (most - Math.min(r, g, b)) / most > colourShare)) {
        guess[p] = 1;
        count++;
        mean[0] += r;
        mean[1] += g;
        mean[2] += b;
      }
    }
  }
  if (!count) return new Float32Array(n);
  // Towards the thing's colour; its own mean includes soft edges, which the second reckoning leaves out.
  let v = mean.map((m) => m / count - 1);
  const along = (p: number): number =>
    ((relative[3 * p] - 1) * v[0] + (relative[3 * p + 1] - 1) * v[1] + (relative[3 * p + 2] - 1) * v[2]) /
    (v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
  const sure = [0, 0, 0];
  let many = 0;
  for (let p = 0; p < n; p++) {
    if (!guess[p] || along(p) < 0.8) continue;
    many++;
    for (let c = 0; c < 3; c++) sure[c] += relative[3 * p + c];
  }
  if (many) v = sure.map((m) => m / many - 1);
  return localEdge(guess, along, width, height, border);
}

/** Pixels around a guessed edge that decide where it runs, and how far to look for pure paper and pure thing. */
const bandPx = 4,
  lookPx = 7;

/**
 * In a band along the guessed edge: 0 for the palest, 1 for the deepest found near by, so that a shadow that falls on paper
 * and thing alike does not move the edge between them. `along` is averaged over 3 × 3 pixels for the two ends.
 */
export function localEdge(guess: Uint8Array, along: (p: number) => number, width: number, height: number, border: number): Float32Array {
  const n = width * height;
  const outer = grown(guess, width, height, bandPx);
  const rest = grown(
    guess.map((v) => 1 - v),
    width,
    height,
    bandPx,
  );
  const far = grown(outer, width, height, lookPx + 1);
  const value = new Float32Array(n),
    calm = new Float32Array(n);
  for (let p = 0; p < n; p++) if (far[p]) value[p] = along(p);
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const p = y * width + x;
      if (far[p])
        calm[p] =
          (value[p - width - 1] +
            value[p - width] +
            value[p - width + 1] +
            value[p - 1] +
            value[p] +
            value[p + 1] +
            value[p + width - 1] +
            value[p + width] +
            value[p + width + 1]) /
          9;
    }
  }
  const field = new Float32Array(n);
  for (let y = border; y < height - border; y++) {
    for (let x = border; x < width - border; x++) {
      const p = y * width + x;
      if (!outer[p]) continue;
      if (!rest[p]) {
        field[p] = 1;
        continue;
      }
      let lo = Infinity,
        hi = -Infinity;
      for (let dy = -lookPx; dy <= lookPx; dy++) {
        if (y + dy < 1 || y + dy >= height - 1) continue;
        for (let dx = -lookPx; dx <= lookPx; dx++) {
          if (x + dx < 1 || x + dx >= width - 1) continue;
          const v = calm[p + dy * width + dx];
          if (v < lo) lo = v;
          if (v > hi) hi = v;
        }
      }
      field[p] = hi - lo > 0.15 ? Math.max(0, Math.min(1, (value[p] - lo) / (hi - lo))) : guess[p];
    }
  }
  return field;
}

/** Each channel divided by the paper's own light there. */
function toPaper(rgb: Float32Array, width: number, height: number): Float32Array {
  const tiles = 12;
  const tw = Math.ceil(width / tiles),
    th = Math.ceil(height / tiles);
  const light = new Float32Array(tiles * tiles * 3);
  for (let c = 0; c < 3; c++) {
    const tile = new Float32Array(tiles * tiles);
    for (let ty = 0; ty < tiles; ty++) {
      for (let tx = 0; tx < tiles; tx++) {
        const values: number[] = [];
        for (let y = ty * th; y < Math.min(height, (ty + 1) * th); y += 3)
          for (let x = tx * tw; x < Math.min(width, (tx + 1) * tw); x += 3) values.push(rgb[3 * (y * width + x) + c]);
        values.sort((a, b) => a - b);
        tile[ty * tiles + tx] = values[Math.floor(values.length * 0.9)] ?? 0;
      }
    }
    // A plane through the bright tiles, so that a tile full of the thing does not count as dark paper.
    const plane = bowl(tile, tiles, fitPlane(tile, tiles));
    for (let i = 0; i < tile.length; i++)
      light[3 * i + c] = Math.max(
        0.02,
        plane(i % tiles, Math.floor(i / tiles)),
        tile[i] > 0.92 * plane(i % tiles, Math.floor(i / tiles)) ? tile[i] : 0,
      );
  }
  const out = new Float32Array(rgb.length);
  for (let y = 0; y < height; y++) {
    const fy = Math.max(0, Math.min(tiles - 1.001, (y + 0.5) / th - 0.5)),
      iy = Math.floor(fy),
      ty = fy - iy;
    for (let x = 0; x < width; x++) {
      const fx = Math.max(0, Math.min(tiles - 1.001, (x + 0.5) / tw - 0.5)),
        ix = Math.floor(fx),
        tx = fx - ix;
      const i = 3 * (iy * tiles + ix),
        p = 3 * (y * width + x);
      for (let c = 0; c < 3; c++) {
        const l =
          (light[i + c] * (1 - tx) + light[i + 3 + c] * tx) * (1 - ty) +
          (light[i + 3 * tiles + c] * (1 - tx) + light[i + 3 * tiles + 3 + c] * tx) * ty;
        out[p + c] = rgb[p + c] / l;
      }
    }
  }
  return out;
}

/** Least squares plane; tiles far below it (the thing itself) are left out, three times over. */
function fitPlane(tile: Float32Array, tiles: number): (x: number, y: number) => number {
  let plane = (): ((x: number, y: number) => number) => () => Math.max(...tile);
  let now = plane();
  let keep = Array.from(tile, (_, i) => i).filter((i) => tile[i] > 0.5 * Math.max(...tile));
  for (let round = 0; round < 3 && keep.length >= 12; round++) {
    let sx = 0,
      sy = 0,
      sv = 0;
    for (const i of keep) {
      sx += i % tiles;
      sy += Math.floor(i / tiles);
      sv += tile[i];
    }
    const n = keep.length,
      mx = sx / n,
      my = sy / n,
      mv = sv / n;
    let xx = 0,
      xy = 0,
      yy = 0,
      xv = 0,
      yv = 0;
    for (const i of keep) {
      const dx = (i % tiles) - mx,
        dy = Math.floor(i / tiles) - my,
        dv = tile[i] - mv;
      xx += dx * dx;
      xy += dx * dy;
      yy += dy * dy;
      xv += dx * dv;
      yv += dy * dv;
    }
    const det = xx * yy - xy * xy;
    const a = det > 1e-9 ? (xv * yy - yv * xy) / det : 0,
      b = det > 1e-9 ? (yv * xx - xv * xy) / det : 0;
    plane = () => (x, y) => mv + a * (x - mx) + b * (y - my);
    now = plane();
    keep = keep.filter((i) => tile[i] > 0.9 * now(i % tiles, Math.floor(i / tiles)));
  }
  return now;
}

/** A tile within this share of what is expected there is paper. */
const likePaper = 0.08;

/**
 * Light that falls off towards a corner is no plane: a surface of the second degree through the tiles that are paper by the
 * plane, then through those that are by the surface. The plane where the surface explains no more of them.
 */
function bowl(tile: Float32Array, tiles: number, plane: (x: number, y: number) => number): (x: number, y: number) => number {
  const like = (by: (x: number, y: number) => number): number[] =>
    Array.from(tile, (_, i) => i).filter((i) => Math.abs(tile[i] / Math.max(1e-6, by(i % tiles, Math.floor(i / tiles))) - 1) < likePaper);
  const rowOf = (x: number, y: number): number[] => {
    const u = (2 * x) / (tiles - 1) - 1,
      v = (2 * y) / (tiles - 1) - 1;
    return [1, u, v, u * u, u * v, v * v];
  };
  const before = like(plane);
  let now = plane,
    keep = before;
  for (let round = 0; round < 6 && keep.length >= 24; round++) {
    const A = new Float64Array(36),
      b = new Float64Array(6);
    for (const i of keep) {
      const row = rowOf(i % tiles, Math.floor(i / tiles));
      for (let j = 0; j < 6; j++) {
        b[j] += row[j] * tile[i];
        for (let k = 0; k < 6; k++) A[j * 6 + k] += row[j] * row[k];
      }
    }
    const of = solveDamped(A, b, 1e-6);
    now = (x, y) => rowOf(x, y).reduce((sum, v, j) => sum + v * of[j], 0);
    keep = like(now);
  }
  return keep.length > 1.1 * before.length ? now : plane;
}

/** Pixels within `reach` of the mask, by sides and corners. */
export function grown(mask: Uint8Array, width: number, height: number, reach: number): Uint8Array {
  let now = mask;
  for (let round = 0; round < reach; round++) {
    const out = now.slice();
    for (let y = 1; y < height - 1; y++) {
      for (let x = 1; x < width - 1; x++) {
        const p = y * width + x;
        if (now[p])
          out[p - 1] =
            out[p + 1] =
            out[p - width] =
            out[p + width] =
            out[p - width - 1] =
            out[p - width + 1] =
            out[p + width - 1] =
            out[p + width + 1] =
              1;
      }
    }
    now = out;
  }
  return now;
}
