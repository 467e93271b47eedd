import { useSignal } from '@preact/signals';
import { cropOf, markWeights, weightName, type WeightName } from '../../../../core/separate/index.ts';
import { sayLength } from '../../../ui/fields/units.ts';
import { LengthBox } from '../../../ui/fields/LengthField.tsx';
import { Slider } from '../../../ui/fields/Slider.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { words } from '../../../store/words.ts';
import { addMark, setPicture } from '../edits.ts';
import type { PicturePartProps } from '../part.ts';
import { brush } from '../state.ts';

/** The brush, a box by numbers, and the marks made so far. */
export function MarkControls({ bench, job, picture, read }: PicturePartProps) {
  const w = words().picture;
  const { image, units } = job;
  const crop = cropOf(picture.crop, read, image);
  const box = useSignal({ x: image.widthMm / 4, y: image.heightMm / 4, width: image.widthMm / 2, height: image.heightMm / 2 });
  const { weight, radius } = brush.value;
  const { veil } = picture;
  /** mm on the print a picture width makes. */
  const widthMm = image.widthMm / crop.width;
  const size = sayLength(2 * radius * widthMm, units, units === 'mm' ? 0 : 1);
  const set = (change: Partial<typeof box.value>): void => {
    box.value = { ...box.value, ...change };
  };
  const place = (label: string, key: 'x' | 'y' | 'width' | 'height', most: number) => (
    <LengthBox
      label={label}
      mm={box.value[key]}
      units={units}
      minMm={key === 'x' || key === 'y' ? 0 : 0.1}
      maxMm={most}
      onSet={(mm) => set({ [key]: mm ?? 0 })}
    />
  );
  return (
    <div class="mark-controls">
      <p>
        {w.markHow}
        <Why of={w.marking}>{w.markWhy}</Why>
      </p>
      <div class="brush-size">
        <span>
          {w.veilText(Math.round(veil * 100))}
          <Why of={w.veil}>{w.veilWhy}</Why>
        </span>
        <Slider
          label={w.veil}
          value={veil}
          min={0}
          max={1}
          step={0.1}
          text={w.veilText(Math.round(veil * 100))}
          onMove={(v) => setPicture(bench, 'veil', { veil: Math.round(v * 10) / 10 }, 'veil')}
          onSettle={() => undefined}
        />
      </div>
      <fieldset class="choices">
        <legend>{w.brush}</legend>
        {(['more', 'less', 'none'] as const).map((name) => (
          <label key={name} class="choice-mark">
            <input
              type="radio"
              name="brush"
              checked={weight === name}
              onChange={() => {
                brush.value = { ...brush.value, weight: name };
              }}
            />
            <span class="hatched">
              <Hatch name={name} />
              {w.weights[name]}
            </span>
          </label>
        ))}
      </fieldset>
      <div class="brush-size">
        <span>{w.brushSizeText(size)}</span>
        <Slider
          label={w.brushSize}
          value={radius}
          min={0.005}
          max={0.15}
          step={0.005}
          text={w.brushSizeText(size)}
          onMove={(r) => {
            brush.value = { ...brush.value, radius: r };
          }}
          onSettle={() => undefined}
        />
      </div>
      <details class="fold">
        <summary>{w.box}</summary>
        <div>
          <div class="fields">
            {place(w.boxLeft, 'x', image.widthMm)}
            {place(w.boxTop, 'y', image.heightMm)}
            {place(w.boxWidth, 'width', image.widthMm)}
            {place(w.boxHeight, 'height', image.heightMm)}
          </div>
          <button
            type="button"
            class="button button-line"
            onClick={() => {
              const { x, y, width, height } = box.value;
              addMark(bench, {
                kind: 'box',
                weight: markWeights[weight],
                x: crop.x + (x / image.widthMm) * crop.width,
                y: crop.y + (y / image.heightMm) * crop.height,
                width: (width / image.widthMm) * crop.width,
                height: (height / image.heightMm) * crop.height,
              });
            }}
          >
            {w.addBox}
          </button>
        </div>
      </details>
      {picture.important.length > 0 && (
        <section class="marks-made" aria-label={w.marks}>
          <h2>{w.marks}</h2>
          <ol>
            {picture.important.map((mark, i) => (
              <li key={i}>
                <span class="hatched">
                  <Hatch name={weightName(mark.weight)} />
                  {w.mark(i + 1, w.kinds[mark.kind], w.weights[weightName(mark.weight)])}
                </span>
                <button
                  type="button"
                  class="button button-line button-small"
                  aria-label={w.removeMark(i + 1)}
                  onClick={() => setPicture(bench, 'mark-away', { important: picture.important.filter((_, k) => k !== i) })}
                >
                  ×
                </button>
              </li>
            ))}
          </ol>
          {picture.important.length > 1 && (
            <button type="button" class="button button-line" onClick={() => setPicture(bench, 'mark-away', { important: [] })}>
              {w.clearMarks}
            </button>
          )}
        </section>
      )}
    </div>
  );
}

function Hatch({ name }: { readonly name: WeightName }) {
  return (
    <svg class="hatch" viewBox="0 0 56 56" aria-hidden="true">
      <rect width="56" height="56" fill="#d0d0d0" />
      <rect width="56" height="56" fill={`url(#mark-${name})`} />
    </svg>
  );
}
