/** Ink films: drawdowns, mixing, learning, trust. */
export const ink = {};
