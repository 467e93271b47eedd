import type { PlannedLayer } from '../../../core/plan/index.ts';

interface Props {
  readonly layers: readonly PlannedLayer[];
  /** Ids of the films that lie here, first down first. */
  readonly here: readonly string[];
}

/** A cut through the print: one film a run, the first at the bottom; films that lie here are drawn, the others are gaps. */
export function Films({ layers, here }: Props) {
  const step = 5;
  const height = layers.length * step + 4;
  return (
    <svg class="films" viewBox={`0 0 40 ${height}`} aria-hidden="true">
      {layers.map(
        (layer, i) =>
          here.includes(layer.id) && (
            <rect
              key={layer.id}
              class="film"
              x="1"
              width="38"
              y={height - 4 - (i + 1) * step}
              height={step}
              fill={layer.swatch?.srgb ?? 'none'}
            />
          ),
      )}
      <rect class="film-paper" x="0" y={height - 4} width="40" height="3" />
    </svg>
  );
}
