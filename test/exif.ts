/** A JPEG that says which camera took it: an Exif block (CIPA DC-008) put in after its first marker. */
export function withExif(jpeg: Uint8Array, said: { make: string; model: string; focalMm?: number; orientation?: number }): Uint8Array {
  const block = exifBlock(said);
  const out = new Uint8Array(jpeg.length + block.length + 4);
  out.set(jpeg.subarray(0, 2));
  out.set([0xff, 0xe1, (block.length + 2) >> 8, (block.length + 2) & 255], 2);
  out.set(block, 6);
  out.set(jpeg.subarray(2), 6 + block.length);
  return out;
}

function exifBlock({ make, model, focalMm = 50, orientation = 1 }: Parameters<typeof withExif>[1]): Uint8Array {
  const bytes = new Uint8Array(256);
  const view = new DataView(bytes.buffer);
  const tiff = 6;
  const text = (at: number, value: string): void => bytes.set(new TextEncoder().encode(value), at);
  text(0, 'Exif');
  text(tiff, 'II');
  view.setUint16(tiff + 2, 42, true);
  view.setUint32(tiff + 4, 8, true);
  const entry = (at: number, tag: number, type: number, count: number, value: number): void => {
    view.setUint16(tiff + at, tag, true);
    view.setUint16(tiff + at + 2, type, true);
    view.setUint32(tiff + at + 4, count, true);
    view.setUint32(tiff + at + 8, value, true);
  };
  view.setUint16(tiff + 8, 4, true);
  entry(10, 0x010f, 2, make.length + 1, 100);
  entry(22, 0x0110, 2, model.length + 1, 140);
  entry(34, 0x0112, 3, 1, orientation);
  entry(46, 0x8769, 4, 1, 70);
  view.setUint16(tiff + 70, 1, true);
  entry(72, 0x920a, 5, 1, 200);
  view.setUint32(tiff + 200, Math.round(focalMm * 10), true);
  view.setUint32(tiff + 204, 10, true);
  text(tiff + 100, make);
  text(tiff + 140, model);
  return bytes;
}
