import { signal, type ReadonlySignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';

/** Keeps the screen from going dark while the page is open and in sight; false where the browser can't or won't. */
export function useAwake(): ReadonlySignal<boolean> {
  const awake = useMemo(() => signal(false), []);
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    let gone = false;
    const ask = async (): Promise<void> => {
      if (!('wakeLock' in navigator) || document.visibilityState !== 'visible' || lock) return;
      try {
        lock = await navigator.wakeLock.request('screen');
        if (gone) return void lock.release();
        awake.value = true;
        lock.addEventListener('release', () => {
          lock = null;
          awake.value = false;
        });
      } catch {
        awake.value = false;
      }
    };
    const seen = (): void => {
      void ask();
    };
    document.addEventListener('visibilitychange', seen);
    void ask();
    return () => {
      gone = true;
      document.removeEventListener('visibilitychange', seen);
      void lock?.release();
    };
  }, []);
  return awake;
}
