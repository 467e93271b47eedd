import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** For what opens in a station: it comes into sight and takes the keys, and they go back to where they were when it closes. */
export function useOpened(deps: readonly unknown[] = []): RefObject<HTMLElement | null> {
  const section = useRef<HTMLElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    section.current?.focus({ preventScroll: true });
    section.current?.scrollIntoView({ block: 'start' });
    return () => {
      if (document.activeElement !== document.body && !section.current?.contains(document.activeElement)) return;
      const back = before instanceof HTMLElement && before !== document.body && before.isConnected ? before : null;
      (back ?? document.getElementById('station'))?.focus();
    };
  }, deps);
  return section;
}
