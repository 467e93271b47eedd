import { expect, test } from 'vitest';
import { newPicture } from './picture.ts';
import { JobSchema } from './schema/schema.ts';

test('a new picture asks for what a job that says nothing about it asks for', () => {
  const fresh = newPicture('Low Tide.JPG', new Map());
  const { picture } = JobSchema.parse({
    schemaVersion: 1,
    title: 'x',
    image: { widthMm: 10, heightMm: 10 },
    picture: { file: fresh.file, name: fresh.name },
  });
  expect(fresh).toEqual(picture);
  expect(fresh).toMatchObject({ file: 'pictures/low-tide.jpg', name: 'Low Tide' });
});

test('a picture never takes the file of another', () => {
  expect(
    newPicture(
      'tide.png',
      new Map([
        ['pictures/tide.png', 0],
        ['pictures/tide-2.png', 0],
      ]),
    ).file,
  ).toBe('pictures/tide-3.png');
  expect(newPicture('.png', new Map())).toMatchObject({ file: 'pictures/png.png', name: '.png' });
});
