import { useSignal } from '@preact/signals';
import { withGuess } from '../../../../core/asks/index.ts';
import { doubtOfGuess } from '../../../../core/ink/index.ts';
import type { JobInk } from '../../../../core/job/index.ts';
import { overOf } from '../../../../core/plan/index.ts';
import { ProblemList } from '../../../ui/ProblemList.tsx';
import { TextField } from '../../../ui/fields/TextField.tsx';
import { sayLab } from '../../../ui/fields/format.ts';
import { CountField } from '../../../ui/fields/CountField.tsx';
import { words } from '../../../store/words.ts';
import type { ReadPatches } from '../../../engine/ink-questions.ts';
import type { Problem } from '../../../../core/problem.ts';
import { setInk } from '../edits.ts';
import { FileButton } from '../../../ui/fields/FileButton.tsx';
import { MarkPhoto } from './MarkPhoto.tsx';
import { MixParts } from '../pot/MixParts.tsx';
import { ReadingField } from './ReadingField.tsx';
import { emptySlots, inkOfSlots, slotsOf, stepLabel, type HowRead, type Slot } from '../shelf/slots.ts';
import { refuse, type InkPartProps } from '../state.ts';

interface Props extends InkPartProps {
  /** null: a new one. */
  readonly ink: JobInk | null;
  readonly id: string;
  readonly onDone: (id: string | null) => void;
}

const hows: readonly (HowRead | 'mix')[] = ['one-ground', 'two-grounds', 'ladder', 'mix', 'clear'];

/** A colour as doubtful as one told by eye is one, however it came in. */
function guessed(ink: JobInk): JobInk {
  const over = overOf(ink);
  return over?.kind === 'lab' && (over.sigma ?? 0) >= doubtOfGuess.typed ? { ...ink, known: 'by-eye' } : ink;
}

/** Reads an ink anew: typed, from a file, from a photograph. Nothing of it is in the job until it is kept. */
export function ReadingsEditor(props: Props) {
  const { bench, job, ink, id, onDone } = props;
  const w = words().inks;
  const first: HowRead | 'mix' = ink?.from ?? 'two-grounds';
  const paper = job.papers.find((p) => p.id === props.paper.id)?.reading ?? null;
  const name = useSignal(ink?.name ?? w.newInkName);
  const how = useSignal<HowRead | 'mix'>(first);
  const slots = useSignal<readonly Slot[]>(ink && ink.from !== 'mix' ? slotsOf(ink) : emptySlots(first === 'mix' ? 'clear' : first, paper));
  const file = useSignal<({ readonly name: string } & ReadPatches) | null>(null);
  const photo = useSignal<{ readonly name: string; readonly bytes: Uint8Array } | null>(null);
  const problems = useSignal<readonly Problem[]>([]);
  const head = {
    id,
    name: name.value,
    role: ink?.role ?? (how.value === 'clear' ? ('transparent-base' as const) : ('ink' as const)),
    densityGPerMl: ink?.densityGPerMl ?? 1.1,
    ...(ink?.drawdownMicrons === undefined ? {} : { drawdownMicrons: ink.drawdownMicrons }),
    ...(ink?.leftGrams === undefined ? {} : { leftGrams: ink.leftGrams }),
  };
  const ready = how.value === 'mix' ? null : inkOfSlots(head, how.value, slots.value);
  const missing = slots.value.filter((s) => s.reading === null).map((s) => s.label);

  const put = (key: string, reading: Slot['reading']): void => {
    slots.value = slots.value.map((s) => (s.key === key ? { ...s, reading } : s));
  };
  const setHow = (next: HowRead | 'mix'): void => {
    how.value = next;
    if (next === 'mix') return;
    // What was read already keeps its meaning: bare paper stays bare paper, ink on it stays ink on it.
    const had = slots.value;
    const same: Record<string, readonly string[]> = {
      ground: ['ground', 'white'],
      white: ['white', 'ground'],
      over: ['over', 'overWhite', 'step-0'],
      overWhite: ['overWhite', 'over', 'step-0'],
      'step-0': ['step-0', 'over', 'overWhite'],
    };
    slots.value = emptySlots(next, paper).map((s) => ({
      ...s,
      reading: had.find((h) => (same[s.key] ?? [s.key]).includes(h.key))?.reading ?? s.reading,
    }));
  };
  const setSteps = (shares: readonly number[]): void => {
    const old = slots.value.filter((s) => s.share !== undefined);
    slots.value = [
      ...slots.value.filter((s) => s.share === undefined),
      ...shares.map((share, i): Slot => ({ key: `step-${i}`, label: stepLabel(share), reading: old[i]?.reading ?? null, share })),
    ];
  };
  const keep = (whole: JobInk): void => {
    setInk(bench, withGuess(ink, guessed(whole)), ink ? 'readings' : 'new');
    onDone(whole.id);
  };
  const readFile = async (name: string, bytes: Uint8Array): Promise<void> => {
    try {
      const read = await bench.ask('readings', { bytes, name });
      file.value = { ...read, name };
      problems.value = read.problems;
    } catch (error) {
      refuse(bench, error);
    }
  };
  const readSheet = async (photoName: string, bytes: Uint8Array): Promise<void> => {
    try {
      const read = await bench.ask('sheetPhoto', { bytes, name: photoName, ink: { id, name: name.value } });
      how.value = read.ink.from === 'mix' ? 'ladder' : read.ink.from;
      slots.value = slotsOf(read.ink);
      problems.value = read.problems;
      bench.announce(w.sheetRead(slots.value.filter((s) => s.share !== undefined || s.key.startsWith('over')).length));
    } catch (error) {
      refuse(bench, error);
    }
  };

  const shares = slots.value.flatMap((s) => s.share ?? []);
  return (
    <section class="ink-detail readings-editor" aria-label={w.readingOf(name.value)}>
      <TextField
        label={w.name}
        value={name.value}
        most={200}
        onSet={(text) => {
          if (text) name.value = text;
        }}
      />
      <fieldset class="ink-chips">
        <legend>{w.howRead}</legend>
        {hows.map((h) => (
          <label key={h} class="ink-chip">
            <input type="radio" name="how-read" checked={how.value === h} onChange={() => setHow(h)} />
            {w.madeFrom[h]}
          </label>
        ))}
      </fieldset>
      {how.value === 'mix' ? (
        <MixParts
          job={job}
          bench={bench}
          id={id}
          from={ink?.from === 'mix' ? ink : null}
          onKeep={(parts) => keep({ id, name: name.value, role: head.role, densityGPerMl: head.densityGPerMl, from: 'mix', parts })}
        />
      ) : (
        <>
          {how.value !== 'clear' && (
            <div class="sources">
              <FileButton label={w.file} hint={w.fileHint} accept=".txt,.cgats,.cxf,.xml,.csv,.ti3,.it8" onFile={readFile} />
              <FileButton label={w.sheetPhoto} hint={w.sheetPhotoHint} accept="image/*" onFile={readSheet} />
              <FileButton
                label={w.anyPhoto}
                hint={w.anyPhotoHint}
                accept="image/*"
                onFile={(photoName, bytes) => {
                  photo.value = { name: photoName, bytes };
                }}
              />
            </div>
          )}
          {file.value && <p>{w.fromFile(file.value.patches.length, file.value.name)}</p>}
          {photo.value && (
            <MarkPhoto
              key={photo.value.name}
              bench={bench}
              photo={photo.value}
              slots={slots.value.filter((s) => s.key !== 'ground' && s.key !== 'white')}
              onRead={(read) => {
                problems.value = read.problems;
                const marked = slots.value.filter((s) => s.key !== 'ground' && s.key !== 'white');
                slots.value = slots.value.map((s) => ({
                  ...s,
                  reading: marked.includes(s) ? (read.patches[marked.indexOf(s)]?.reading ?? s.reading) : read.paper,
                }));
                photo.value = null;
                bench.announce(w.photoRead);
              }}
            />
          )}
          <div class="slots">
            {slots.value.map((slot) => (
              <div key={slot.key} class="slot">
                {slot.share !== undefined && (
                  <CountField
                    label={w.shareOfStep}
                    value={slot.share * 100}
                    min={0.5}
                    max={100}
                    digits={1}
                    unit="%"
                    onSet={(v) => setSteps(shares.map((s, i) => (slot.key === `step-${i}` ? v / 100 : s)))}
                  />
                )}
                <ReadingField bench={bench} label={slot.label} reading={slot.reading} onSet={(reading) => put(slot.key, reading)} />
                {file.value && (
                  <select
                    class="choice"
                    aria-label={w.choosePatch(slot.label)}
                    value=""
                    onChange={(e) => {
                      const patch = file.value?.patches[Number(e.currentTarget.value)];
                      if (patch) put(slot.key, patch.reading);
                      e.currentTarget.value = '';
                    }}
                  >
                    <option value="">{w.choosePatch(slot.label)}</option>
                    {file.value.patches.map((p, i) => (
                      <option key={`${i} ${p.name}`} value={i}>{`${p.name}  ${sayLab(p.lab)}`}</option>
                    ))}
                  </select>
                )}
              </div>
            ))}
          </div>
          {how.value === 'ladder' && (
            <div class="row">
              <button
                type="button"
                class="button button-box"
                disabled={shares.length >= 12}
                onClick={() => setSteps([...shares, (shares.at(-1) ?? 1) / 2])}
              >
                {w.addStep}
              </button>
              <button type="button" class="button button-box" disabled={shares.length < 2} onClick={() => setSteps(shares.slice(0, -1))}>
                {w.fewerSteps}
              </button>
            </div>
          )}
          {problems.value.length > 0 && <ProblemList problems={problems.value} />}
          <div class="row">
            <button
              type="button"
              class="button button-strong"
              disabled={!ready}
              onClick={() => {
                if (ready) keep(ready);
              }}
            >
              {w.keepInk}
            </button>
            <button type="button" class="button button-box" onClick={() => onDone(null)}>
              {w.leaveIt}
            </button>
            {missing.length > 0 && <span>{w.missing(missing.join(', '))}</span>}
          </div>
        </>
      )}
      {how.value === 'mix' && (
        <button type="button" class="button button-box" onClick={() => onDone(null)}>
          {w.leaveIt}
        </button>
      )}
    </section>
  );
}
