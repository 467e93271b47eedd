import { useSignal } from '@preact/signals';
import type { Reading } from '../../../../core/ink/index.ts';
import { sayLab } from '../../../ui/fields/format.ts';
import type { Bench } from '../../../store/bench.ts';
import { words } from '../../../store/words.ts';
import type { ReadPatches } from '../../../engine/ink-questions.ts';
import { FileButton } from '../../../ui/fields/FileButton.tsx';
import { MarkPhoto } from './MarkPhoto.tsx';
import { ReadingField } from './ReadingField.tsx';
import { refuse } from '../state.ts';

interface Props {
  readonly bench: Bench;
  readonly label: string;
  readonly reading: Reading | null;
  readonly onSet: (reading: Reading) => void;
}

/** One reading, taken as it comes to hand: typed, out of a file, or from a photograph that is marked by hand. */
export function OneReading({ bench, label, reading, onSet }: Props) {
  const w = words().inks;
  const file = useSignal<({ readonly name: string } & ReadPatches) | null>(null);
  const photo = useSignal<{ readonly name: string; readonly bytes: Uint8Array } | null>(null);
  const take = (taken: Reading): void => {
    file.value = null;
    photo.value = null;
    onSet(taken);
  };
  const readFile = async (name: string, bytes: Uint8Array): Promise<void> => {
    try {
      const read = await bench.ask('readings', { bytes, name });
      if (read.patches.length === 1) take(read.patches[0].reading);
      else file.value = { ...read, name };
    } catch (error) {
      refuse(bench, error);
    }
  };
  return (
    <div class="one-reading">
      <ReadingField bench={bench} label={label} reading={reading} onSet={take} />
      <div class="sources">
        <FileButton label={w.file} about={label} accept=".txt,.cgats,.cxf,.xml,.csv,.ti3,.it8" onFile={readFile} />
        <FileButton
          label={w.anyPhoto}
          about={label}
          accept="image/*"
          onFile={(name, bytes) => {
            photo.value = { name, bytes };
          }}
        />
      </div>
      {file.value && (
        <select
          class="choice"
          aria-label={w.choosePatch(label)}
          value=""
          onChange={(e) => {
            const patch = file.value?.patches[Number(e.currentTarget.value)];
            if (patch && e.currentTarget.value !== '') take(patch.reading);
          }}
        >
          <option value="">{w.choosePatch(label)}</option>
          {file.value.patches.map((p, i) => (
            <option key={`${i} ${p.name}`} value={i}>{`${p.name}  ${sayLab(p.lab)}`}</option>
          ))}
        </select>
      )}
      {photo.value && (
        <MarkPhoto
          key={photo.value.name}
          bench={bench}
          photo={photo.value}
          slots={[{ key: 'patch', label, reading: null }]}
          onRead={(read) => {
            const [patch] = read.patches;
            if (read.problems.length > 0) bench.refuse(read.problems);
            if (patch) take(patch.reading);
          }}
        />
      )}
    </div>
  );
}
