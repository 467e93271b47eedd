import type { Region } from '../../core/form/index.ts';

const paths = new WeakMap<Region, string>();

/** Outline of a region as the data of an SVG path, to a hundredth of a millimetre. Worked out once a region. */
export function regionPath(region: Region): string {
  let path = paths.get(region);
  if (path === undefined) {
    path = region.rings
      .map((ring) => {
        let d = '';
        for (let i = 0; i < ring.length; i += 2) d += `${i === 0 ? 'M' : 'L'}${shortNumber(ring[i])} ${shortNumber(ring[i + 1])}`;
        return `${d}Z`;
      })
      .join('');
    paths.set(region, path);
  }
  return path;
}

function shortNumber(value: number): string {
  return String(Math.round(value * 100) / 100);
}
