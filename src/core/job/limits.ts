/** Apart from the schema, so that a page that only needs these carries no validator. */
export const currentSchemaVersion = 1;

/** The most layers that one byte of code per pixel can tell apart. */
export const mostLayers = 8;
