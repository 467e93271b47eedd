/** One file of this Laydown: its path under the scope and the SHA-256 of its bytes. */
export type Listed = readonly [path: string, print: string];

export interface Shelf {
  /** Keeps every file, or throws and keeps none. What an earlier Laydown holds already isn't asked for again. */
  fill(): Promise<void>;
  clearOthers(): Promise<void>;
  /** Which kept file answers a request; null when the shelf has nothing to do with it. */
  pathOf(method: string, url: string): string | null;
  /**
   * A kept file, whole; what was damaged on this machine is fetched again and mended. Undefined where neither can be had: then this
   * edition is given up, and from the next request on everything comes from the network.
   */
  find(path: string): Promise<Response | undefined>;
}

export function createShelf(
  files: readonly Listed[],
  name: string,
  scope: string,
  store: Pick<CacheStorage, 'open' | 'keys' | 'delete' | 'match'> = caches,
  get: typeof fetch = (...ask) => fetch(...ask),
  onGivenUp: () => void = () => undefined,
): Shelf {
  const prints = new Map(files);
  let givenUp = false;
  const urlOf = (path: string): string => new URL(path, scope).href;

  /** A file that arrived cut off, or from another edition, must never be served for the right one. */
  const isWhole = async (response: Response, print: string): Promise<boolean> => {
    const hash = await crypto.subtle.digest('SHA-256', await response.clone().arrayBuffer());
    return Array.from(new Uint8Array(hash), (b) => b.toString(16).padStart(2, '0')).join('') === print;
  };

  async function bring([path, print]: Listed): Promise<readonly [string, Response]> {
    const there = await store.match(urlOf(path), { ignoreVary: true });
    if (there && (await isWhole(there, print))) return [path, there];
    const fresh = await get(urlOf(path), { cache: 'no-cache' });
    if (!fresh.ok || !(await isWhole(fresh, print))) throw new Error(`${path} did not arrive whole.`);
    return [path, fresh];
  }

  return {
    async fill() {
      const brought = await Promise.all(files.map(bring));
      const cache = await store.open(name);
      try {
        for (const [path, response] of brought) await cache.put(urlOf(path), response);
      } catch (error) {
        await store.delete(name);
        throw error;
      }
    },
    async clearOthers() {
      for (const other of await store.keys()) if (other.startsWith('laydown-') && other !== name) await store.delete(other);
    },
    pathOf(method, url) {
      if (method !== 'GET' || !url.startsWith(scope)) return null;
      const path = url.slice(scope.length).replace(/[?#].*$/, '') || 'index.html';
      return prints.has(path) ? path : null;
    },
    async find(path) {
      if (givenUp || !(await store.keys()).includes(name)) return undefined;
      const cache = await store.open(name);
      const print = prints.get(path) ?? '';
      const kept = await cache.match(urlOf(path), { ignoreVary: true }).catch(() => undefined);
      if (kept && (await isWhole(kept, print).catch(() => false))) return kept;
      const fresh = await get(urlOf(path), { cache: 'no-cache' }).catch(() => null);
      // No network: there is no better edition to go over to either.
      if (!fresh) return undefined;
      if (fresh.ok && (await isWhole(fresh, print))) {
        await cache.put(urlOf(path), fresh.clone()).catch(() => undefined);
        return fresh;
      }
      givenUp = true;
      await store.delete(name);
      onGivenUp();
      return undefined;
    },
  };
}
