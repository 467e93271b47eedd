import type { Region } from '../../core/form/index.ts';

interface Props {
  /** Where ink passes, mm; drawn black on the stencil's paper. */
  readonly prints: Region;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly label: string;
}

const paths = new WeakMap<Region, string>();

/** Outline of a region as the data of an SVG path, to a tenth of a millimetre. */
function pathOf(region: Region): string {
  let path = paths.get(region);
  if (path === undefined) {
    path = region.rings
      .map((ring) => {
        let d = '';
        for (let i = 0; i < ring.length; i += 2) d += `${i === 0 ? 'M' : 'L'}${ring[i].toFixed(1)} ${ring[i + 1].toFixed(1)}`;
        return `${d}Z`;
      })
      .join('');
    paths.set(region, path);
  }
  return path;
}

export function StencilPicture({ prints, widthMm, heightMm, label }: Props) {
  return (
    <svg class="stencil-picture" viewBox={`0 0 ${widthMm} ${heightMm}`} role="img" aria-label={label}>
      <rect class="stencil-paper" width={widthMm} height={heightMm} />
      <path class="stencil-opening" fill-rule="evenodd" d={pathOf(prints)} />
    </svg>
  );
}

interface StepsProps extends Omit<Props, 'prints'> {
  /** In the order of printing. */
  readonly prints: readonly Region[];
}

/** Flats one over the other: darker where more of them lie. */
export function StepsPicture({ prints, widthMm, heightMm, label }: StepsProps) {
  return (
    <svg class="stencil-picture" viewBox={`0 0 ${widthMm} ${heightMm}`} role="img" aria-label={label}>
      <rect class="stencil-paper" width={widthMm} height={heightMm} />
      {prints.map((region, i) => (
        <path key={i} class={prints.length > 1 ? 'stencil-flat' : 'stencil-opening'} fill-rule="evenodd" d={pathOf(region)} />
      ))}
    </svg>
  );
}
