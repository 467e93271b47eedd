/** Apart from the schema, so that a page that only needs these carries no validator. */
export const currentSchemaVersion = 1;

/** The most layers that one byte of code per pixel can tell apart. */
export const mostLayers = 8;

/** Forms laid into one cut, and copies that they are repeated to, all together: more lines than a knife runs in a week. */
export const mostParts = 2000;
export const mostCopies = 20_000;
/** Bridges pinned by hand in one layer, and places kept free of them. */
export const mostPins = 2000;

/** Groups within groups, in fields that a later Laydown added: deeper than this no program writes. */
export const mostDeep = 64;

/** Marks on a picture that a job keeps, and places of one stroke of the brush. */
export const mostMarks = 500;
export const mostStrokePoints = 5000;
