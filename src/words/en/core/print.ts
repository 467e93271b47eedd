/** Layers on paper. */
export const print = {};
