import type { en } from '../../en/index.ts';
import type { Same } from '../../say.ts';

export const colour: Same<typeof en.colour> = {};
