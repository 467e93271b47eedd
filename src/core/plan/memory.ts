/**
 * The Plan is made part by part; a part is made again only if what it reads has changed. Plain data is compared by
 * value (its JSON), results of earlier parts by identity: an unchanged part hands on the same object.
 */
export interface Memory {
  /** `reads`: everything that `make` looks at. `keep`: how many versions to remember (undo and sliders come back). */
  part<T>(name: string, reads: readonly unknown[], make: () => T, keep?: number): T;
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
    return JSON.stringify(value);
  };
  return {
    part<T>(name: string, reads: readonly unknown[], make: () => T, keep = 4): T {
      let versions = known.get(name);
      if (!versions) known.set(name, (versions = new Map()));
      const key = reads.map(keyOf).join('|');
      let result: T;
      if (versions.has(key)) {
        result = versions.get(key) as T;
        versions.delete(key);
      } else {
        result = make();
        if (typeof result === 'object' && result !== null) numberOf(result);
      }
      versions.set(key, result);
      if (versions.size > keep) versions.delete(versions.keys().next().value as string);
      return result;
    },
  };
}
