/** Along an edge, corners left out: lines of several squares meet there and blur. */
const from = 0.3,
  to = 0.7,
  samples = 9;
/** What a blurred edge may be told to lie at; farther off the board was not what it seemed. */
const least = 0.25,
  most = 0.75;

/**
 * How deep a field (0 paper, 1 thing) is just on an edge. Half way would be right if the camera told light as it falls; few
 * do. A checked board knows: its corners are found by their symmetry, whatever the tone, and its edges run straight between
 * them. The field covers the board, `columns` by `rows` squares. The middle of all edges' depths.
 */
export function edgeLevel(field: Float32Array, width: number, height: number, columns: number, rows: number): number {
  const depths: number[] = [];
  const across = width / columns,
    down = height / rows;
  const at = (x: number, y: number): number => {
    const fx = Math.max(0, Math.min(width - 1.001, x - 0.5)),
      fy = Math.max(0, Math.min(height - 1.001, y - 0.5));
    const i = Math.floor(fx),
      j = Math.floor(fy),
      tx = fx - i,
      ty = fy - j,
      p = j * width + i;
    return (field[p] * (1 - tx) + field[p + 1] * tx) * (1 - ty) + (field[p + width] * (1 - tx) + field[p + width + 1] * tx) * ty;
  };
  const mean = (where: (share: number) => number): void => {
    let sum = 0;
    for (let k = 0; k < samples; k++) sum += where(from + ((to - from) * k) / (samples - 1));
    depths.push(sum / samples);
  };
  for (let i = 1; i < columns; i++) for (let j = 0; j < rows; j++) mean((s) => at(i * across, (j + s) * down));
  for (let j = 1; j < rows; j++) for (let i = 0; i < columns; i++) mean((s) => at((i + s) * across, j * down));
  if (depths.length === 0) return 0.5;
  depths.sort((a, b) => a - b);
  return Math.max(least, Math.min(most, depths[depths.length >> 1]));
}
