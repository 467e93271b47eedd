import type { en } from '../../en/index.ts';
import type { Same } from '../../say.ts';

export const job: Same<typeof en.job> = {};
