import { useSignal } from '@preact/signals';
import { srgbFromXyz, xyzFromLab, type Lab } from '../../../../core/colour/index.ts';
import { labOfHex, readingByEye, staircase, type GuessedBy, type Reading } from '../../../../core/ink/index.ts';
import { inkByEye } from '../../../../core/asks/index.ts';
import { TextField } from '../../../ui/fields/TextField.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { sayDelta } from '../../../ui/fields/format.ts';
import { words } from '../../../store/words.ts';
import { setInk } from '../edits.ts';
import { FileButton } from '../../../ui/fields/FileButton.tsx';
import { PickOnPhoto } from './PickOnPhoto.tsx';
import { asJob } from '../edits.ts';
import { srgbOf, type InkPartProps } from '../state.ts';

interface Props extends InkPartProps {
  readonly id: string;
  readonly onDone: (id: string | null) => void;
}

/** An ink without an instrument: from a fan of swatches, a code, a photograph; then compared with the drawdown, patch by patch. */
export function ByEye({ bench, job, paper, id, onDone }: Props) {
  const w = words().inks;
  const name = useSignal(w.newInkName);
  const start = useSignal<{ readonly lab: Lab; readonly by: Exclude<GuessedBy, 'compared'> } | null>(null);
  const answers = useSignal<readonly number[]>([]);
  const comparing = useSignal(false);
  const photo = useSignal<{ readonly name: string; readonly bytes: Uint8Array } | null>(null);
  const typed = useSignal('');
  const pick = (lab: Lab, by: Exclude<GuessedBy, 'compared'>): void => {
    start.value = { lab, by };
    answers.value = [];
    comparing.value = false;
  };
  const stand = start.value && staircase(start.value.lab, answers.value);
  const reading: Extract<Reading, { kind: 'lab' }> | null = !start.value
    ? null
    : answers.value.length > 0 && stand
      ? { kind: 'lab', lab: stand.lab, sigma: stand.sigma }
      : readingByEye(start.value.lab, start.value.by);
  const ground = job.papers.find((p) => p.id === paper.id)?.reading ?? { kind: 'lab' as const, lab: [95, 0, 2] as const, sigma: 3 };
  const wrong = typed.value !== '' && !/^\s*#?([0-9a-f]{3}|[0-9a-f]{6})\s*$/i.test(typed.value);
  return (
    <section class="ink-detail by-eye" aria-label={w.byEye}>
      <h2>
        {w.byEye}
        <Why of={w.byEye}>{w.byEyeWhy}</Why>
      </h2>
      {!comparing.value && (
        <>
          <p>{w.byEyeText}</p>
          <div class="eye-fan" role="group" aria-label={w.fan}>
            {fan.map(({ lab, srgb }, i) => (
              <button
                key={srgb + i}
                type="button"
                style={{ background: srgb }}
                aria-label={w.fanSwatch(w.hues[Math.floor(i / lightnesses.length)] ?? '', Math.round(lab[0]))}
                aria-pressed={start.value?.lab === lab}
                onClick={() => pick(lab, 'swatch')}
              />
            ))}
          </div>
          <div class="eye-ways">
            <label class="length-field">
              <span class="length-label">{w.hex}</span>
              <input
                class="text"
                spellcheck={false}
                placeholder="#c0392b"
                aria-invalid={wrong}
                value={typed.value}
                onInput={(e) => {
                  typed.value = e.currentTarget.value;
                  if (/^\s*#?([0-9a-f]{3}|[0-9a-f]{6})\s*$/i.test(typed.value)) pick(labOfHex(typed.value, ''), 'typed');
                }}
              />
            </label>
            <label class="length-field">
              <span class="length-label">{w.colourField}</span>
              <input
                type="color"
                class="eye-colour"
                value={reading ? srgbOf(reading.lab) : '#808080'}
                onInput={(e) => pick(labOfHex(e.currentTarget.value, ''), 'swatch')}
              />
            </label>
            <FileButton
              label={w.fromPicture}
              hint={w.fromPictureHint}
              accept="image/*"
              onFile={(file, bytes) => {
                photo.value = { name: file, bytes };
              }}
            />
          </div>
          {photo.value && <PickOnPhoto key={photo.value.name} bench={bench} photo={photo.value} onPick={(lab) => pick(lab, 'picture')} />}
        </>
      )}
      {reading && (
        <p class="eye-now">
          <span class="reading-swatch" style={{ background: srgbOf(reading.lab) }} /> {w.byEyeNow(sayDelta(reading.sigma ?? 0))}
        </p>
      )}
      {stand && !comparing.value && (
        <div class="row">
          <button
            type="button"
            class="button button-strong"
            onClick={() => {
              comparing.value = true;
            }}
          >
            {w.compareDrawdown}
          </button>
          <span>{w.compareHint}</span>
        </div>
      )}
      {stand && comparing.value && (
        <>
          <p>
            <b>{stand.done ? w.compareDone : w.compareAsk(answers.value.length + 1)}</b>
          </p>
          {!stand.done && (
            <div class="eye-patches" role="group" aria-label={w.compareAsk(answers.value.length + 1)}>
              {[3, 1, 5, 4, 0, 6, 2].map((n) => (
                <button
                  key={n}
                  type="button"
                  class={`eye-patch eye-patch-${n}`}
                  style={{ background: stand.patches[n].srgb }}
                  aria-label={w.patches[n]}
                  onClick={() => {
                    answers.value = [...answers.value, n];
                  }}
                />
              ))}
            </div>
          )}
          <div class="row">
            <button
              type="button"
              class="button button-box"
              disabled={answers.value.length === 0}
              onClick={() => {
                answers.value = answers.value.slice(0, -1);
              }}
            >
              {w.compareBack}
            </button>
            <button
              type="button"
              class="button button-box"
              onClick={() => {
                comparing.value = false;
              }}
            >
              {w.compareOther}
            </button>
          </div>
        </>
      )}
      <TextField
        label={w.name}
        value={name.value}
        most={200}
        onSet={(text) => {
          if (text) name.value = text;
        }}
      />
      <div class="row">
        <button
          type="button"
          class="button button-strong"
          disabled={!reading}
          onClick={() => {
            if (!reading) return;
            setInk(bench, inkByEye({ id, name: name.value }, asJob(ground), reading), 'new');
            onDone(id);
          }}
        >
          {w.keepEye}
        </button>
        <button type="button" class="button button-box" onClick={() => onDone(null)}>
          {w.leaveIt}
        </button>
      </div>
    </section>
  );
}

const lightnesses = [82, 65, 48, 30];
/** Twelve hues and grey, each from light to dark, as strong as a screen shows them. */
const fan = [...Array.from({ length: 12 }, (_, i) => i * 30 + 15), null].flatMap((hue) =>
  lightnesses.map((L): { readonly lab: Lab; readonly srgb: string } => {
    const at = (chroma: number): Lab =>
      hue === null ? [L, 0, 0] : [L, chroma * Math.cos((hue * Math.PI) / 180), chroma * Math.sin((hue * Math.PI) / 180)];
    let chroma = 85;
    while (chroma > 8 && !srgbFromXyz(xyzFromLab(at(chroma))).inGamut) chroma -= 3;
    return { lab: at(chroma), srgb: srgbOf(at(chroma)) };
  }),
);
