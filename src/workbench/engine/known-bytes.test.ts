import { expect, test } from 'vitest';
import { createKnownBytes } from './known-bytes.ts';

test('the same file in another array is the array known before, whatever it is called; another file is not', () => {
  const known = createKnownBytes();
  const bytes = (last: number): Uint8Array => Uint8Array.from({ length: 20_000 }, (_, i) => (i === 19_999 ? last : i));
  const first = known(new Map([['kelp.svg', bytes(1)]])).get('kelp.svg');
  const again = known(
    new Map([
      ['copy.svg', bytes(1)],
      ['other.svg', bytes(2)],
    ]),
  );
  expect(again.get('copy.svg')).toBe(first);
  expect(again.get('other.svg')).toEqual(bytes(2));
  // Two that look alike to the key, for a byte it passes over, are told apart.
  const near = bytes(1);
  near[3]++;
  expect(known(new Map([['near.svg', near]])).get('near.svg')).toBe(near);
});
