// Two inks from Lab readings of their drawdowns: what they make over one another, and with more base in the upper one.
import { labFromSpectrum } from 'laydown/colour';
import { defaultSurface, filmOf, inkOverOneGround, spectrumFromReading, stackReflectance } from 'laydown/ink';

const read = (lab: [number, number, number]) => spectrumFromReading({ kind: 'lab', lab }, '');
const paper = read([95, 0, 2]);
const drawdowns = { blue: read([55, -37, -50]), yellow: read([89, -5, 93]) };
const surface = defaultSurface(Object.values(drawdowns), false);
const ink = (over: typeof paper) => inkOverOneGround({ ground: paper, ink: over, surface }).ink;
const [blue, yellow] = [ink(drawdowns.blue), ink(drawdowns.yellow)];

for (const strength of [1, 0.5, 0.25]) {
  const spectrum = stackReflectance(paper, [filmOf(yellow), filmOf(blue, strength)], surface);
  console.log(
    `blue at ${strength * 100} % over yellow: Lab ${labFromSpectrum(spectrum)
      .map((v) => v.toFixed(0))
      .join(' ')}`,
  );
}
