import { useRef } from 'preact/hooks';
import { canOpenFolders } from '../../store/keep/files.ts';
import { words } from '../../store/words.ts';
import { openJob, type Source } from '../actions.ts';
import type { ShellProps } from '../props.ts';
import { LanguageSwitch } from './LanguageSwitch.tsx';

/** The ways to put a job on the bench. */
export function OpenChoices({ bench, keeping, offline, onOpened }: ShellProps & { readonly onOpened?: () => void }) {
  const w = words().shell;
  const open = async (source: Source): Promise<void> => {
    await openJob(bench, keeping, source);
    if (!bench.refused.value) onOpened?.();
  };
  const chooser = useRef<HTMLInputElement>(null);
  return (
    <div class="row">
      <input
        ref={chooser}
        type="file"
        accept=".laydown,.zip,application/zip"
        class="unseen"
        tabindex={-1}
        aria-label={w.openFile}
        onChange={(e) => {
          const file = e.currentTarget.files?.[0];
          e.currentTarget.value = '';
          if (file) void open({ file });
        }}
      />
      <button type="button" class="button" onClick={() => chooser.current?.click()}>
        {w.openFile}
      </button>
      {canOpenFolders && (
        <button type="button" class="button" onClick={() => void open('folder')}>
          {w.openFolder}
        </button>
      )}
      <button type="button" class="button" onClick={() => void open('example')}>
        {w.openExample}
      </button>
      {offline.canInstall.value && (
        <button type="button" class="button" onClick={() => offline.install()}>
          {w.install}
        </button>
      )}
      <LanguageSwitch />
    </div>
  );
}
