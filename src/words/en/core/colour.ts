import type { DeltaText, NumberText, SayingText, ShareText } from '../../text.ts';

/** Spectra and colours. */
export const colour = {
  noSurfaceHasIt: ({ x, y, z }: { x: NumberText; y: NumberText; z: NumberText }) =>
    `No paper or ink can have the colour X ${x}, Y ${y}, Z ${z} (white is 100).`,
  lampD50: 'Daylight for judging (D50)',
  lampD65: 'Daylight (D65)',
  lampA: 'Warm bulb (A)',
  lampWarm: 'Warm LED (B1)',
  lampNeutral: 'Neutral LED (B3)',
  lampCold: 'Cold LED (B5)',
  barePaper: 'bare paper',
  groundItself: ({ n }: { n: number }) => `ground ${n}`,
  onGround: ({ what, n }: { what: SayingText; n: number }) => `${what} on ground ${n}`,
  parts: ({
    one,
    other,
    alike,
    apart,
    near,
    far,
    chance,
  }: {
    one: SayingText;
    other: SayingText;
    alike: SayingText;
    apart: SayingText;
    near: DeltaText;
    far: DeltaText;
    chance: ShareText;
  }) => `${one} and ${other}. ${alike}: alike (ΔE00 ${near}). ${apart}: apart (${far}). So in ${chance} of the calculated prints.`,
  checkLight: 'Check the numbers, and that they were read under D50 with the 2° observer.',
};
