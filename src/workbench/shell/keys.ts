import type { Bench } from '../store/bench.ts';
import type { Keeping } from '../store/keep/keeping.ts';
import { saveNow } from './actions.ts';

/** Keys that work everywhere: undo, redo, save. In a field being typed in, undo belongs to the field. */
export function listenToKeys(bench: Bench, keeping: Keeping): void {
  window.addEventListener('keydown', (e) => {
    if (!(e.ctrlKey || e.metaKey) || e.altKey) return;
    const key = e.key.toLowerCase();
    if (key === 's') {
      e.preventDefault();
      void saveNow(bench, keeping);
      return;
    }
    const target = e.target as HTMLElement;
    const typing = target.matches('textarea, input:not([type=range], [type=checkbox], [type=radio], [type=button])');
    if (typing || (key !== 'z' && key !== 'y')) return;
    e.preventDefault();
    if (key === 'y' || e.shiftKey) bench.redo();
    else bench.undo();
  });
  // Where nothing can be kept, the browser asks before the page goes.
  window.addEventListener('beforeunload', (e) => {
    if (!keeping.isSafe() && keeping.state.value !== 'keeping') e.preventDefault();
  });
  window.addEventListener('pagehide', () => {
    void keeping.flush();
  });
}
