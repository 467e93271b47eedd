/** Connected parts of a raster: `labels` 0 for background, 1..count in the order in which rows meet them. */
export interface Labels {
  readonly labels: Int32Array;
  readonly count: number;
}

/** Labels the pixels where `mask` is `value`; pixels touch by sides, or also by corners. Runs joined by union and find. */
export function labelParts(mask: Uint8Array, width: number, height: number, value: number, corners: boolean): Labels {
  const labels = new Int32Array(width * height);
  const parent: number[] = [0];
  const find = (a: number): number => {
    let root = a;
    while (parent[root] !== root) root = parent[root];
    while (parent[a] !== root) {
      const next = parent[a];
      parent[a] = root;
      a = next;
    }
    return root;
  };
  const reach = corners ? 1 : 0;
  for (let y = 0; y < height; y++) {
    const row = y * width;
    let x = 0;
    while (x < width) {
      if (mask[row + x] !== value) {
        x++;
        continue;
      }
      const from = x;
      while (x < width && mask[row + x] === value) x++;
      let label = 0;
      if (y > 0) {
        const lo = Math.max(0, from - reach) + row - width, hi = Math.min(width, x + reach) + row - width;
        let last = 0;
        for (let p = lo; p < hi; p++) {
          const above = labels[p];
          if (above === last || above === 0) continue;
          last = above;
          const root = find(above);
          if (label === 0) label = root;
          else if (root !== label) {
            const low = Math.min(root, label);
            parent[Math.max(root, label)] = low;
            label = low;
          }
        }
      }
      if (label === 0) {
        label = parent.length;
        parent.push(label);
      }
      labels.fill(label, row + from, row + x);
    }
  }
  const final = new Int32Array(parent.length);
  let count = 0;
  for (let i = 1; i < parent.length; i++) {
    const root = find(i);
    if (root === i) final[i] = ++count;
    else final[i] = final[root];
  }
  for (let i = 0; i < labels.length; i++) if (labels[i] !== 0) labels[i] = final[labels[i]];
  return { labels, count };
}
