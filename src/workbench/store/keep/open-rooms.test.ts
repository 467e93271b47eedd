import { describe, expect, test } from 'vitest';
import { openPatiently } from './open-rooms.ts';

const now = (): Promise<void> => Promise.resolve();
const failing = (times: number, name: string): { open: () => Promise<string>; tries: () => number } => {
  let tried = 0;
  return {
    open: async () => {
      if (tried++ < times) throw new DOMException('no', name);
      return 'open';
    },
    tries: () => tried,
  };
};

describe('the browser’s own storage', () => {
  test('is tried again while its files are out of reach, as after a power cut', async () => {
    const { open, tries } = failing(3, 'UnknownError');
    expect(await openPatiently(open, now)).toBe('open');
    expect(tries()).toBe(4);
  });

  test('that stays out of reach is told in the end', async () => {
    await expect(openPatiently(failing(99, 'UnknownError').open, now)).rejects.toMatchObject({ name: 'UnknownError' });
  });

  test('that is denied or full is told at once', async () => {
    for (const name of ['SecurityError', 'QuotaExceededError']) {
      const { open, tries } = failing(99, name);
      await expect(openPatiently(open, now)).rejects.toMatchObject({ name });
      expect(tries()).toBe(1);
    }
  });
});
