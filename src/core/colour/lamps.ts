import type { Lab, Xyz } from './bands.ts';
import { labFromXyz } from './lab.ts';
import { whitePoints, type Illuminant } from './weights.ts';

/** Lights that a print may hang under: daylight, a warm bulb, and LEDs warm, neutral and cold; the first is what prints are judged by. */
export const lamps: readonly Illuminant[] = ['D50', 'D65', 'A', 'LED-B1', 'LED-B3', 'LED-B5'];

// Bradford cone responses (ICC.1:2022, annex E), as for everything that a screen shows.
const toCones = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
];
const fromCones = [
  [0.9869929, -0.1470543, 0.1599627],
  [0.4323053, 0.5183603, 0.0492912],
  [-0.0085287, 0.0400428, 0.9684867],
];
const times = (m: readonly (readonly number[])[], v: readonly number[]): Xyz =>
  m.map((row) => row[0] * v[0] + row[1] * v[1] + row[2] * v[2]) as unknown as Xyz;

const adaptations = new Map(
  lamps.map((lamp) => {
    const [from, to] = [times(toCones, whitePoints[lamp]), times(toCones, whitePoints.D50)];
    const scaled = toCones.map((row, i) => row.map((v) => (v * to[i]) / from[i]));
    return [lamp, fromCones.map((row) => [0, 1, 2].map((c) => row[0] * scaled[0][c] + row[1] * scaled[1][c] + row[2] * scaled[2][c]))];
  }),
);

/** XYZ under a lamp → XYZ under D50 that looks the same to eyes used to each (Bradford). */
export function adaptedToD50(xyz: Xyz, lamp: Illuminant): Xyz {
  return lamp === 'D50' ? xyz : times(adaptations.get(lamp)!, xyz);
}

/** What eyes that are used to a lamp see of XYZ under it, as Lab under D50. */
export function labUnderLamp(xyz: Xyz, lamp: Illuminant): Lab {
  return labFromXyz(adaptedToD50(xyz, lamp));
}
