import { de } from './de/index.ts';
import { en } from './en/index.ts';
import { learn } from './tell.ts';

learn('en', en);
learn('de', de);
