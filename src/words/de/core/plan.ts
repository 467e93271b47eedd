import type { en } from '../../en/index.ts';
import type { Same } from '../../say.ts';

export const plan: Same<typeof en.plan> = {};
