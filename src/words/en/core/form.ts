/** Shapes: drawings, photographs of things, placing. */
export const form = {};
