import { afterAll, describe } from 'vitest';
import { compared } from './desk/compare.ts';
import { forEveryone } from './desk/everyone.ts';
import { closeBench } from './desk/one-bench.ts';
import { onPaper } from './desk/print.ts';
import { stationsInParts } from './desk/stations.ts';

afterAll(closeBench);

// On one page, in this order: what changes the job comes last.
describe('on paper', onPaper);
describe('in parts', stationsInParts);
describe('for everyone', forEveryone);
describe('compared', compared);
