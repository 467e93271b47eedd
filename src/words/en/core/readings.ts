/** Readings: files, photographs, what is typed. */
export const readings = {};
