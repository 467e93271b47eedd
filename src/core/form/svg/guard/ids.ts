/** Letters and figures of any alphabet, and what joins them: such an id needs no escaping anywhere. */
const plain = /^[\p{L}\p{N}_.:-]*$/u;

/** An id without signs that mean something in XML or in a reference; the same id always becomes the same. */
export function safeId(id: string): string {
  return plain.test(id) ? id : id.replace(/[^\p{L}\p{N}_.:-]/gu, (sign) => `_x${sign.codePointAt(0)!.toString(16)}_`);
}

/** References inside a value (`url(#id)`) as their ids are now called. */
export function withSafeIds(value: string): string {
  if (!value.includes('url(')) return value;
  return value.replace(/url\(\s*(['"]?)#(.*?)\1\s*\)/g, (_, __, id: string) => `url(#${safeId(id)})`);
}
