import type { Random } from '../../src/core/random.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const odd: readonly Json[] = [
  null,
  true,
  0,
  -1,
  1,
  2,
  0.5,
  7,
  30,
  499,
  1e9,
  -1e9,
  1e308,
  1e-300,
  '',
  'x',
  'blue',
  'ring',
  'toString',
  '__proto__',
  'a\u0007b',
  '\u202e',
  '<b>',
  '=1+1',
  [],
  {},
  [[]],
  { kind: 'lab', lab: [50, 0, 0] },
];

/** A job in which some fields are others', missing, moved or doubled. */
export function spoiltJob(job: unknown, random: Random): Json {
  const out = JSON.parse(JSON.stringify(job)) as Json;
  for (let n = 1 + random.below(4); n > 0; n--) spoil(out, random);
  return out;
}

function spoil(whole: Json, random: Random): void {
  let at: Json = whole,
    key: string | number | null = null,
    holder: Json = whole;
  while (typeof at === 'object' && at !== null) {
    const keys: readonly (string | number)[] = Array.isArray(at) ? [...at.keys()] : Object.keys(at);
    if (keys.length === 0 || (key !== null && random.next() < 0.2)) break;
    holder = at;
    key = keys[random.below(keys.length)];
    at = (at as Record<string | number, Json>)[key];
  }
  if (key === null || typeof holder !== 'object' || holder === null) return;
  const record = holder as Record<string | number, Json>;
  switch (random.below(6)) {
    case 0:
      if (Array.isArray(holder)) holder.splice(Number(key), 1);
      else delete record[key];
      break;
    case 1:
      if (Array.isArray(holder)) holder.push(structuredClone(holder[Number(key)]));
      else record[`${key}${random.below(9)}`] = structuredClone(record[key]);
      break;
    case 2:
      record[key] = typeof at === 'number' ? at * [-1, 0.001, 3, 10, 100, 1e6][random.below(6)] : odd[random.below(odd.length)];
      break;
    case 3: {
      let deep: Json = 1;
      for (let i = random.below(200); i > 0; i--) deep = [deep];
      record[key] = deep;
      break;
    }
    default:
      record[key] = structuredClone(odd[random.below(odd.length)]);
  }
}
