/** Apart from the schema, so that a page that only needs these carries no validator. */
export const currentSchemaVersion = 1;

/** The most layers that one byte of code per pixel can tell apart. */
export const mostLayers = 8;

/** Marks on a picture that a job keeps, and places of one stroke of the brush. */
export const mostMarks = 500;
export const mostStrokePoints = 5000;
