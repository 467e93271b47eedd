/**
 * The text of a drawing's file: UTF-8 unless its first bytes (byte order mark) or its XML declaration say otherwise
 * (XML 1.0, appendix F). Bytes that make no sense become “�”; names in a foreign alphabet are of no importance here.
 */
export function decodeDrawing(bytes: Uint8Array): string {
  const [a, b, c, d] = bytes;
  if (a === 0xfe && b === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  if (a === 0xff && b === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (a === 0 && b === 0x3c && c === 0) return new TextDecoder('utf-16be').decode(bytes);
  if (a === 0x3c && b === 0 && d === 0) return new TextDecoder('utf-16le').decode(bytes);
  const head = String.fromCharCode(...bytes.subarray(0, 200));
  const named = /^[\s\u00ef\u00bb\u00bf]*<\?xml[^>]*\sencoding\s*=\s*["']([\w.:-]+)["']/i.exec(head)?.[1];
  if (named === undefined || /^utf-?(8|16)/i.test(named)) return new TextDecoder('utf-8').decode(bytes);
  try {
    return new TextDecoder(named).decode(bytes);
  } catch {
    return new TextDecoder('utf-8').decode(bytes);
  }
}
