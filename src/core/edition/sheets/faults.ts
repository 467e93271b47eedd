import { asWritten, say, type Saying } from '../../../words/say.ts';

/** What is most often wrong with a sheet, as the count keeps it. */
export const usualFaults = ['off-register', 'smeared', 'blot', 'thin-ink', 'creased', 'fingerprint'] as const;
export type UsualFault = (typeof usualFaults)[number];

/** What was wrong with a sheet: a usual fault, or the printmaker's own words. With neither nobody has said. */
export interface Fault {
  readonly fault?: UsualFault;
  readonly text?: string;
}

const sayings: Readonly<Record<UsualFault, Saying>> = {
  'off-register': say('edition.offRegister'),
  smeared: say('edition.smeared'),
  blot: say('edition.blot'),
  'thin-ink': say('edition.thinInk'),
  creased: say('edition.creased'),
  fingerprint: say('edition.fingerprint'),
};

export function sayFault({ fault, text }: Fault): Saying {
  return fault ? sayings[fault] : text ? asWritten(text) : say('edition.spoiled');
}

/** The fault alone, out of what carries one. */
export function faultOf({ fault, text }: Fault): Fault {
  return { ...(fault !== undefined && { fault }), ...(text !== undefined && { text }) };
}

/** Counts of before kept the usual faults in the words of whoever counted. */
const wordsOfBefore: ReadonlyMap<string, UsualFault> = new Map([
  ['off register', 'off-register'],
  ['thin ink', 'thin-ink'],
  ['Passer stimmt nicht', 'off-register'],
  ['verschmiert', 'smeared'],
  ['Klecks', 'blot'],
  ['zu wenig Farbe', 'thin-ink'],
  ['geknickt', 'creased'],
  ['Fingerabdruck', 'fingerprint'],
]);

/** A fault out of a count, new or old. */
export function readFault(kept: { readonly fault?: unknown; readonly text?: unknown }): Fault {
  const words = [kept.fault, kept.text].find((one) => typeof one === 'string');
  if (words === undefined) return {};
  const fault = usualFaults.find((one) => one === words) ?? wordsOfBefore.get(words);
  return fault ? { fault } : { text: words };
}
