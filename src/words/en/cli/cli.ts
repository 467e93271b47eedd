/** The command line. */
export const cli = {};
