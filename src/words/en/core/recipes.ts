/** Recipes, pots, orders, shelves. */
export const recipes = {};
