/**
 * Opening and closing by a disc, on 0/1 masks. Distances are exact up to the radius: columns first, then the nearest column
 * within reach. Beyond the border the mask counts as it is at the border.
 */
export function dilate(mask: Uint8Array, width: number, height: number, radiusPx: number): Uint8Array {
  const reach = Math.floor(radiusPx), far = reach + 1;
  const column = new Uint8Array(mask.length);
  for (let x = 0; x < width; x++) {
    let d = far;
    for (let y = 0; y < height; y++) {
      d = mask[y * width + x] ? 0 : Math.min(far, d + 1);
      column[y * width + x] = d;
    }
    d = far;
    for (let y = height - 1; y >= 0; y--) {
      d = mask[y * width + x] ? 0 : Math.min(far, d + 1);
      if (d < column[y * width + x]) column[y * width + x] = d;
    }
  }
  // For each step to the side, how far up or down still lies inside the disc.
  const span = Int16Array.from({ length: reach + 1 }, (_, dx) => Math.floor(Math.sqrt(Math.max(0, radiusPx * radiusPx - dx * dx))));
  const out = new Uint8Array(mask.length);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    // Most pixels are decided without looking around: they are on, or nothing within reach is.
    let near = 0;
    for (let s = 0; s < reach && s < width; s++) if (column[row + s] < far) near++;
    for (let x = 0; x < width; x++) {
      if (x + reach < width && column[row + x + reach] < far) near++;
      if (x > reach && column[row + x - reach - 1] < far) near--;
      if (near === 0) continue;
      if (column[row + x] === 0) {
        out[row + x] = 1;
        continue;
      }
      const from = Math.max(0, x - reach), to = Math.min(width - 1, x + reach);
      for (let s = from; s <= to; s++) {
        if (column[row + s] <= span[Math.abs(s - x)]) {
          out[row + x] = 1;
          break;
        }
      }
    }
  }
  return out;
}

export function erode(mask: Uint8Array, width: number, height: number, radiusPx: number): Uint8Array {
  return inverted(dilate(inverted(mask), width, height, radiusPx));
}

function inverted(mask: Uint8Array): Uint8Array {
  const out = new Uint8Array(mask.length);
  for (let i = 0; i < out.length; i++) out[i] = 1 - mask[i];
  return out;
}

/** Ink narrower than twice the radius goes. */
export function opened(mask: Uint8Array, width: number, height: number, radiusPx: number): Uint8Array {
  return dilate(erode(mask, width, height, radiusPx), width, height, radiusPx);
}

/** Paper narrower than twice the radius goes. */
export function closed(mask: Uint8Array, width: number, height: number, radiusPx: number): Uint8Array {
  return erode(dilate(mask, width, height, radiusPx), width, height, radiusPx);
}

/** Switches every connected part (by edges) of value `of` that has fewer pixels than `least` and does not touch the border. */
export function withoutSpecks(mask: Uint8Array, width: number, height: number, of: 0 | 1, least: number): Uint8Array {
  const out = mask.slice();
  const seen = new Uint8Array(mask.length);
  const stack = new Int32Array(mask.length);
  for (let start = 0; start < mask.length; start++) {
    if (seen[start] || mask[start] !== of) continue;
    let count = 0, top = 0, border = false;
    stack[top++] = start;
    seen[start] = 1;
    const begin = top - 1;
    const members: number[] = [];
    while (top > begin) {
      const i = stack[--top];
      if (count++ < least) members.push(i);
      const x = i % width, y = (i - x) / width;
      border ||= x === 0 || y === 0 || x === width - 1 || y === height - 1;
      if (x > 0 && !seen[i - 1] && mask[i - 1] === of) { seen[i - 1] = 1; stack[top++] = i - 1; }
      if (x + 1 < width && !seen[i + 1] && mask[i + 1] === of) { seen[i + 1] = 1; stack[top++] = i + 1; }
      if (y > 0 && !seen[i - width] && mask[i - width] === of) { seen[i - width] = 1; stack[top++] = i - width; }
      if (y + 1 < height && !seen[i + width] && mask[i + width] === of) { seen[i + width] = 1; stack[top++] = i + width; }
    }
    if (count < least && !(border && of === 0)) for (const i of members) out[i] = 1 - of;
  }
  return out;
}
