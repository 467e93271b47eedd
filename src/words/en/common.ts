import type { ListText, NameText } from '../text.ts';

/** What every room says. */
export const common = {
  asWritten: ({ text }: { text: NameText }) => text,
  listed: ({ all }: { all: ListText }) => all,
  to: 'to',
};
