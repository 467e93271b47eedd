/** The Job document, and where in it something is. */
export const job = {};
