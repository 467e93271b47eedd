/**
 * Texts that every program can open: no control characters (a terminal obeys them), no halves of a pair (UTF-16), nothing that XML 1.0 (section 2.2)
 * forbids. A name is one line; a note may have several.
 */
const unfit = /[\p{Cc}\p{Cs}\ufffe\uffff\u2028\u2029]/gu;
const unfitInNote = /(?![\t\n\r])[\p{Cc}\p{Cs}\ufffe\uffff]/gu;

/** For schemas: a text in which nothing has to be cleaned. */
export const plainLine = /^[^\p{Cc}\p{Cs}\ufffe\uffff\u2028\u2029]*$/u;
export const plainNote = /^(?:[\t\n\r]|[^\p{Cc}\p{Cs}\ufffe\uffff])*$/u;

export function cleanLine(text: string): string {
  return text.replace(/[\t\n\r\u2028\u2029]+/g, ' ').replace(unfit, '');
}

export function cleanNote(text: string): string {
  return text.replace(unfitInNote, '');
}
