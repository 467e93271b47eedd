/** What the Plan says where rooms meet. */
export const plan = {};
