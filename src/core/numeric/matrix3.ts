/** Three rows of three. */
export type Matrix3 = readonly (readonly [number, number, number])[];

type Triple = readonly [number, number, number];

export function times3(m: Matrix3, [x, y, z]: Triple): [number, number, number] {
  return [m[0][0] * x + m[0][1] * y + m[0][2] * z, m[1][0] * x + m[1][1] * y + m[1][2] * z, m[2][0] * x + m[2][1] * y + m[2][2] * z];
}

/** Rows and columns change places. */
export function turned3(m: Matrix3): Matrix3 {
  return [0, 1, 2].map((r) => [m[0][r], m[1][r], m[2][r]] as const);
}

/** First `b`, then `a`. */
export function product3(a: Matrix3, b: Matrix3): Matrix3 {
  return turned3(turned3(b).map((column) => times3(a, column)));
}

/** By cofactors. */
export function inverse3(m: Matrix3): Matrix3 {
  const minor = (r: number, c: number): number => {
    const [a, b] = [0, 1, 2].filter((i) => i !== r),
      [p, q] = [0, 1, 2].filter((i) => i !== c);
    return m[a][p] * m[b][q] - m[a][q] * m[b][p];
  };
  const det = [0, 1, 2].reduce((sum, c) => sum + (c % 2 ? -1 : 1) * m[0][c] * minor(0, c), 0);
  const at = (r: number, c: number): number => (((r + c) % 2 ? -1 : 1) * minor(c, r)) / det;
  return [0, 1, 2].map((r) => [at(r, 0), at(r, 1), at(r, 2)] as const);
}
