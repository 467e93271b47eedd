import type { NameText, SayingText } from '../../text.ts';

/** Lengths, masses and other amounts that cannot be read. */
export const units = {
  length: 'length',
  mass: 'weight',
  volume: 'volume',
  tooLong: 'This is too long: a number with its unit is enough.',
  nothingWritten: ({ noun }: { noun: SayingText }) => `There is no ${noun} here.`,
  notRead: ({ text, noun }: { text: NameText; noun: SayingText }) => `“${text}” is not a ${noun}.`,
  notNumber: ({ text }: { text: NameText }) => `“${text}” is not a number.`,
  unitMissing: ({ text }: { text: NameText }) => `A number in “${text}” has no unit.`,
  unknownUnit: ({ unit, noun }: { unit: NameText; noun: SayingText }) => `Laydown knows no unit of ${noun} called “${unit}”.`,
  moreThanOne: ({ text, noun }: { text: NameText; noun: SayingText }) => `“${text}” is more than one ${noun}.`,
  tooLarge: ({ text }: { text: NameText }) => `“${text}” is larger than anything measured here.`,
  // How each is written.
  writeLength: 'Write it like 180 mm, 12.5 cm, 3/16 in, 1 1/2", 7 mil or 90 µm.',
  writeMass: 'Write it like 120 g, 0.5 kg, 4 oz or 1 1/2 lb.',
  writeVolume: 'Write it like 60 mL, 0.25 L or 4 fl oz.',
};
