/** Which part is laid open; kept while other stations are looked at. */
export const open = { part: 'sheets' };

/** Before going to the edition from the press: the pencil. */
export function lookAtSigning(): void {
  open.part = 'signing';
}
