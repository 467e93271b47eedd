import type { en } from '../../en/index.ts';
import type { Same } from '../../say.ts';

export const stencil: Same<typeof en.stencil> = {};
