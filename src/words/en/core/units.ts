/** Lengths, masses and other amounts that cannot be read. */
export const units = {};
