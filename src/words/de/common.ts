import type { en } from '../en/index.ts';
import type { Same } from '../text.ts';

export const common: Same<typeof en.common> = {
  asWritten: ({ text }) => text,
  listed: ({ all }) => all,
  to: 'bis',
};
