import { useSignal } from '@preact/signals';
import type { Complaint, Reading } from '../../../../core/ink/index.ts';
import type { JobPotLog } from '../../../../core/job/index.ts';
import { words } from '../../../store/words.ts';
import { OneReading } from '../read/OneReading.tsx';
import { useAnswer, type InkPartProps } from '../state.ts';

const complaints: readonly Complaint[] = ['too weak', 'too strong', 'too warm', 'too cool', 'too dull', 'too clean'];

interface Props extends InkPartProps {
  readonly layer: { readonly id: string };
  readonly onRead: (reading: Reading, looks?: JobPotLog['rounds'][number]['looks']) => void;
}

/** A drawdown's reading; or, without an instrument, a complaint and the picture that looks like it. */
export function PotReading({ bench, paper, job, layer, onRead }: Props) {
  const w = words().inks;
  const complaint = useSignal<Complaint | null>(null);
  const said = complaint.value;
  const { answer } = useAnswer(bench, 'complaint', said && { layer: layer.id, complaint: said, paperId: paper.id }, [
    said,
    layer.id,
    paper.id,
    job,
  ]);
  return (
    <>
      <OneReading bench={bench} label={w.reads} reading={null} onSet={(reading) => onRead(reading)} />
      <fieldset class="ink-chips">
        <legend>{w.looks}</legend>
        {complaints.map((c) => (
          <label key={c} class="ink-chip">
            <input
              type="radio"
              name="complaint"
              checked={said === c}
              onChange={() => {
                complaint.value = c;
              }}
            />
            {w.complaints[c]}
          </label>
        ))}
      </fieldset>
      {said && answer && (
        <>
          <p>{w.compare}</p>
          <div class="ink-compare">
            <figure>
              <span style={{ background: answer.wantedSrgb }} />
              <figcaption>{w.shouldBe}</figcaption>
            </figure>
            {answer.pictures.map((p) => (
              <button key={p.size} type="button" class="ink-compare-picture" onClick={() => onRead(p.reading, { how: said, size: p.size })}>
                <span style={{ background: `linear-gradient(90deg, ${answer.wantedSrgb} 0 30%, ${p.srgb} 30%)` }} />
                {w.looked(p.size, said)}
              </button>
            ))}
          </div>
        </>
      )}
    </>
  );
}
