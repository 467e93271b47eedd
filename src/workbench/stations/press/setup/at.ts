/** Which part is laid open; kept while other stations are looked at. */
export const open = { part: 'screen' };

/** Before going to the press from elsewhere: its papers laid open. */
export function lookAtPapers(): void {
  open.part = 'papers';
}
