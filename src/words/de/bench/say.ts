/** `1 Lauf`, `3 Läufe`. German has two forms: one, and all other numbers, nought among them. */
export function many(n: number, one: string, more: string): string {
  return `${n} ${n === 1 ? one : more}`;
}
