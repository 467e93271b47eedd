import { fail } from '../core/problem.ts';
import { list, name as asName, say } from '../words/say.ts';

/** What a packet is made of, in the order of the work; the last four are files of their own. */
export const packetParts = [
  'buy',
  'mix',
  'cut',
  'set-up',
  'print',
  'number',
  'keep',
  'look-up',
  'hand-out',
  'register-test',
  'proof-strip',
  'light-and-grounds',
] as const;
export type PacketPart = (typeof packetParts)[number];

/** Used once, by others, or to look closer: each a file of its own. */
export const apart: ReadonlySet<PacketPart> = new Set(['hand-out', 'register-test', 'proof-strip', 'light-and-grounds']);

/** What lies on the table where one cuts and mixes; the rest hangs at the press. */
export const forTheTable: ReadonlySet<PacketPart> = new Set(['buy', 'mix', 'cut', 'keep', 'look-up']);

/** `cut,print` → parts. Throws `ProblemError` for a name that is none. */
export function readParts(text: string): PacketPart[] {
  return text
    .split(/[,;\s]+/)
    .filter((one) => one !== '')
    .map((one) => {
      const part = packetParts.find((known) => known === one.toLowerCase());
      return (
        part ??
        fail(
          'no-such-part',
          say('packet.parts'),
          say('packet.noSuchPart', { part: asName(one) }),
          say('packet.partsAre', { all: list(packetParts.map(asName), 'and') }),
        )
      );
    });
}
