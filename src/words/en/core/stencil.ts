/** What a knife can cut. */
export const stencil = {};
