/**
 * The Plan is made part by part; a part is made again only if what it reads has changed. Plain data is compared by
 * value (its JSON), results of earlier parts by identity: an unchanged part hands on the same object.
 */
export interface Memory {
  /**
   * `make` gets `reads` and nothing else: it is a function of the module, so that nothing it looks at can be forgotten in the key.
   * `keep`: how many versions to remember (undo and sliders come back).
   */
  part<R extends object, T>(name: string, reads: R, make: (reads: R) => T, keep?: number): T;
}

export function createMemory(): Memory {
  const known = new Map<string, Map<string, unknown>>();
  const numbers = new WeakMap<object, number>();
  let next = 1;
  // Regions and stencils are results too, wherever they come from: no Job holds such an object, and as text they are huge.
  const isResult = (value: object): boolean => numbers.has(value) || 'rings' in value || 'certificate' in value;
  const numberOf = (value: object): number => {
    let n = numbers.get(value);
    if (n === undefined) numbers.set(value, (n = next++));
    return n;
  };
  const keyOf = (value: unknown): string => {
    if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'undefined';
    if (isResult(value) || ArrayBuffer.isView(value) || value instanceof Map) return `#${numberOf(value)}`;
    if (Array.isArray(value)) return `[${value.map(keyOf).join()}]`;
    return `{${Object.entries(value)
      .filter(([, v]) => v !== undefined)
      .map(([k, v]) => `${JSON.stringify(k)}:${keyOf(v)}`)
      .join()}}`;
  };
  return {
    part<R extends object, T>(name: string, reads: R, make: (reads: R) => T, keep = 4): T {
      let versions = known.get(name);
      if (!versions) known.set(name, (versions = new Map()));
      const key = keyOf(reads);
      let result: T;
      if (versions.has(key)) {
        result = versions.get(key) as T;
        versions.delete(key);
      } else {
        result = make(reads);
        if (typeof result === 'object' && result !== null) numberOf(result);
      }
      versions.set(key, result);
      if (versions.size > keep) versions.delete(versions.keys().next().value as string);
      return result;
    },
  };
}

/** Some fields of a document: what a part reads of it. */
export function pick<T extends object, K extends keyof T>(from: T, ...keys: readonly K[]): Pick<T, K> {
  return Object.fromEntries(keys.map((key) => [key, from[key]])) as Pick<T, K>;
}
