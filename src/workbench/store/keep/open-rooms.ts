/** Waits between tries, ms: a browser that was just killed may hold its files a moment longer. */
const waitsMs = [100, 300, 900, 2700];
/** What a browser says when its own files are out of reach for now; denied or full storage stays so, and is told at once. */
const passing = new Set(['UnknownError', 'AbortError', 'InvalidStateError', 'TimeoutError']);

/**
 * Opens a database of the browser, again if it can't be reached just now. Rejects with the browser's own error.
 * @param open may throw or reject
 */
export async function openPatiently<T>(
  open: () => Promise<T>,
  wait: (ms: number) => Promise<void> = (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
): Promise<T> {
  for (const ms of waitsMs) {
    try {
      return await open();
    } catch (error) {
      if (!(error instanceof DOMException && passing.has(error.name))) throw error;
      await wait(ms);
    }
  }
  return open();
}
