/** Questions a printmaker asks. */
export const asks = {};
