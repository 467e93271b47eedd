/** What a JPEG says of itself, once it is known to be whole. */
export interface JpegFrame {
  readonly width: number;
  readonly height: number;
  readonly channels: number;
  readonly bits: number;
}

/** More passes over one picture than any camera writes: each costs the decoder a walk over all of it. */
const mostScans = 200;

/**
 * Follows a JPEG from its first marker to its last, through the coded image (ISO/IEC 10918-1 annex B), without decoding. `damaged`
 * where it breaks off before its end, or where its bytes can't hold as many pixels as it says. Decoders paint
 * what is missing grey and say nothing, so a picture cut to a third would be separated as it is.
 */
export function checkJpeg(b: Uint8Array): JpegFrame | 'damaged' {
  if (b[0] !== 0xff || b[1] !== 0xd8) return 'damaged';
  let frame: JpegFrame | undefined;
  let scans = 0,
    coded = 0;
  for (let at = 2; ; ) {
    // Between segments: fill bytes, then a marker. Some writers leave stray bytes there; decoders pass them by.
    while (at < b.length && b[at] !== 0xff) at++;
    while (at < b.length && b[at] === 0xff) at++;
    if (at >= b.length) return 'damaged';
    const marker = b[at++];
    if (marker === 0xd9) break;
    if (marker === 0x00 || marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) continue;
    if (at + 2 > b.length) return 'damaged';
    const length = (b[at] << 8) | b[at + 1];
    if (length < 2 || at + length > b.length) return 'damaged';
    if (isFrame(marker)) {
      if (frame || length < 8) return 'damaged';
      frame = {
        bits: b[at + 2],
        height: (b[at + 3] << 8) | b[at + 4],
        width: (b[at + 5] << 8) | b[at + 6],
        channels: b[at + 7],
      };
    }
    at += length;
    if (marker !== 0xda) continue;
    if (!frame || ++scans > mostScans) return 'damaged';
    const from = at;
    // Coded image: 0xff stands before 0x00 and before restart marks only.
    for (at = b.indexOf(0xff, at); at >= 0 && (b[at + 1] === 0 || (b[at + 1] >= 0xd0 && b[at + 1] <= 0xd7)); ) at = b.indexOf(0xff, at + 2);
    if (at < 0 || at + 1 >= b.length) return 'damaged';
    coded += at - from;
  }
  if (!frame || scans === 0 || !(frame.width > 0 && frame.height > 0)) return 'damaged';
  // Of every block of 8 × 8 pixels the first scan says at least one bit.
  return (frame.width * frame.height) / 512 > coded + 64 ? 'damaged' : frame;
}

/** Table B.1: SOF0..SOF15 without DHT (C4), JPG (C8), DAC (CC). */
export function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
}
