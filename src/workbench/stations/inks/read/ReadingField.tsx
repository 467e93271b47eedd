import { useRef, useState } from 'preact/hooks';
import type { Reading } from '../../../../core/ink/index.ts';
import { ProblemError, type Problem } from '../../../../core/problem.ts';
import { sayNumber } from '../../../ui/fields/units.ts';
import type { Bench } from '../../../store/bench.ts';
import { sayDelta } from '../../../ui/fields/format.ts';
import { told, words } from '../../../store/words.ts';
import { refuse, showReading } from '../state.ts';

interface Props {
  readonly bench: Bench;
  readonly label: string;
  readonly reading: Reading | null;
  readonly onSet: (reading: Reading) => void;
}

/** One reading: its colour, and a line to type Lab, XYZ or a spectrum into. What can't be read is said and changes nothing. */
export function ReadingField({ bench, label, reading, onSet }: Props) {
  const w = words().inks;
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState<Problem | null>(null);
  const shown = reading && showReading(reading);
  /** Enter takes a reading, and so does leaving the field: what was sent is not sent twice. */
  const sent = useRef<string | null>(null);
  const commit = async (): Promise<void> => {
    if (typed === null || typed.trim() === '') return setTyped(null);
    if (sent.current === typed) return;
    sent.current = typed;
    try {
      const read = await bench.ask('readings', { text: typed, place: label });
      setTyped(null);
      setWrong(null);
      onSet(read.patches[0].reading);
    } catch (error) {
      if (error instanceof ProblemError) setWrong(error.problems[0]);
      else refuse(bench, error);
    }
  };
  return (
    <div class="reading-field">
      <span class={shown ? 'reading-swatch' : 'reading-swatch reading-none'} style={shown ? { background: shown.srgb } : {}} />
      <label>
        <span class="length-label">{label}</span>
        <input
          class="text"
          inputMode="text"
          spellcheck={false}
          placeholder={w.typeHint}
          aria-invalid={wrong !== null}
          value={typed ?? (shown ? shown.lab.map((v) => sayNumber(v, 1, true)).join('  ') : '')}
          onInput={(e) => {
            sent.current = null;
            setTyped(e.currentTarget.value);
          }}
          onBlur={() => void commit()}
          onKeyDown={(e) => {
            if (e.key === 'Enter') void commit();
            if (e.key === 'Escape') {
              setTyped(null);
              setWrong(null);
            }
          }}
        />
      </label>
      <small>{reading && (reading.kind === 'photo' || reading.sigma !== undefined) ? w.doubt(sayDelta(reading.sigma ?? 0)) : ''}</small>
      {wrong && (
        <p class="field-note" role="alert">
          <b>
            {told(wrong.message)} {told(wrong.advice)}
          </b>
        </p>
      )}
    </div>
  );
}
