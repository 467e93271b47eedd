/** A picture into stencils and inks. */
export const separate = {};
