/** Pictures that are read. */
export const image = {};
