import { useLayoutEffect, useRef } from 'preact/hooks';
import { Pot } from '../../ui/Pot.tsx';
import { words } from '../../store/words.ts';
import { at, type InkPartProps } from './state.ts';

/** Which layer is spoken of: their pots in a row, kept from part to part. */
export function LayerChoice({ plan, only }: Pick<InkPartProps, 'plan'> & { readonly only: readonly string[] }) {
  const layers = plan.layers.filter((l) => only.includes(l.id));
  const chosen = chosenLayer({ plan, only });
  const row = useRef<HTMLFieldSetElement>(null);
  useLayoutEffect(
    () => row.current?.querySelector('input:checked')?.parentElement?.scrollIntoView({ block: 'nearest', inline: 'nearest' }),
    [chosen],
  );
  return (
    <fieldset class="layer-choice" ref={row}>
      <legend class="unseen">{words().inks.layer}</legend>
      {layers.map((layer) => (
        <label key={layer.id} class="layer-chip" data-choice={layer.id}>
          <input
            type="radio"
            name="ink-layer"
            checked={layer.id === chosen}
            onChange={() => {
              at.layer.value = layer.id;
            }}
          />
          <Pot srgb={layer.swatch?.srgb ?? null} />
          <span>
            <b>{layer.run}</b> {layer.name}
          </span>
        </label>
      ))}
    </fieldset>
  );
}

export function chosenLayer({ plan, only }: Pick<InkPartProps, 'plan'> & { readonly only: readonly string[] }): string | null {
  const ids = plan.layers.map((l) => l.id).filter((id) => only.includes(id));
  return ids.includes(at.layer.value ?? '') ? at.layer.value : (ids[0] ?? null);
}

/** Two colours that meet along a line: wanted and reached. */
export function Pair({
  left,
  right,
  leftSays,
  rightSays,
}: {
  readonly left: string;
  readonly right: string;
  readonly leftSays: string;
  readonly rightSays: string;
}) {
  return (
    <div class="pair-swatch">
      <span style={{ background: left }} />
      <span style={{ background: right }} />
      <small>{leftSays}</small>
      <small>{rightSays}</small>
    </div>
  );
}
