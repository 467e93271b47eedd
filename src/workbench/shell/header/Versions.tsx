import { useSignal } from '@preact/signals';
import { problem } from '../../../core/problem.ts';
import { left, right } from '../compare/state.ts';
import { name as asName, say } from '../../../words/one-language.ts';
import type { KeptVersion } from '../../store/keep/keep.ts';
import { storagePromised } from '../../store/keep/persist.ts';
import { language, sayVersion, words } from '../../store/words.ts';
import type { ShellProps } from '../props.ts';

function compareWith(id: number): void {
  left.value = { which: id, paperId: null };
  right.value = { which: 'now', paperId: null };
}

/** Named versions of the job, kept in this browser. */
export function Versions({ bench, keeping, keeper }: ShellProps) {
  const w = words().shell;
  const name = useSignal('');
  const keep = async (): Promise<void> => {
    const version = name.value.trim();
    if (!version) return;
    bench.refuse(null);
    try {
      await keeping.keepVersion(version);
    } catch {
      return bench.refuse([
        problem('error', 'not-kept', say('where.version', { name: asName(version) }), say('page.versionNotKept'), say('page.saveAsFile')),
      ]);
    }
    name.value = '';
    bench.announce(w.versionKept(version));
  };
  const take = async (version: KeptVersion): Promise<void> => {
    const found = await keeper.version(version.id);
    if (found) bench.take(version, { job: found.job, attachments: found.attachments });
  };
  const versions = keeping.versions.value;
  return (
    <div class="versions">
      <form
        class="row"
        onSubmit={(e) => {
          e.preventDefault();
          void keep();
        }}
      >
        <label>
          {w.versionName}{' '}
          <input
            class="text"
            value={name.value}
            maxLength={200}
            onInput={(e) => {
              name.value = e.currentTarget.value;
            }}
          />
        </label>
        <button type="submit" class="button" disabled={!name.value.trim()}>
          {w.keepVersion}
        </button>
      </form>
      {storagePromised.value === false && <p>{w.keptLightly}</p>}
      {versions.length === 0 ? (
        <p>{w.noVersions}</p>
      ) : (
        <ul>
          {versions.map((v) => (
            <li key={v.id}>
              <b>{sayVersion(v)}</b> <span>{v.job.title}</span>{' '}
              <time dateTime={new Date(v.keptAt).toISOString()}>
                {new Date(v.keptAt).toLocaleString(navigator.language.startsWith(language.value) ? navigator.language : language.value)}
              </time>
              <a class="button button-small button-link" href="#compare" onClick={() => compareWith(v.id)}>
                {words().compare.compareWith(sayVersion(v))}
              </a>
              <button type="button" class="button button-small" onClick={() => void take(v)}>
                {w.takeVersion(sayVersion(v))}
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
