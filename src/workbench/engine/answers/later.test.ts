import { expect, test } from 'vitest';
import { quietTask } from '../../../core/task.ts';
import { bringLater, later } from './later.ts';
import type { Room, Work } from './room.ts';

const digest: Work<'digest'> = () => Promise.resolve({ answer: { codes: 'c', labs: 'l' }, transfer: [] });

test('a part comes when it is first asked for, once; one that did not come is named, and asked for again', async () => {
  let brought = 0;
  const answers = later<'digest'>(
    'sums',
    () => (++brought === 1 ? Promise.reject(new TypeError('no network')) : Promise.resolve({ answers: { digest } })),
    ['digest'],
  );
  expect(brought).toBe(0);
  const ask = (): ReturnType<Work<'digest'>> => answers.digest({}, {} as Room, quietTask);
  await expect(ask()).rejects.toMatchObject({ problems: [{ code: 'part-missing', message: { values: { part: { name: 'sums' } } } }] });
  expect((await ask()).answer.codes).toBe('c');
  await Promise.all([ask(), ask(), bringLater()]);
  expect(brought).toBe(2);
});

test('while the bench rests all parts come, one that fails holds up none', async () => {
  const came: string[] = [];
  later<'digest'>('gone', () => Promise.reject(new TypeError('no network')), ['digest']);
  later<'digest'>('there', async () => (came.push('there'), { answers: { digest } }), ['digest']);
  await bringLater();
  expect(came).toEqual(['there']);
});
