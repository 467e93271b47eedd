// A ring as window: its middle would fall out, so it is bridged; the certificate says whether the sheet is one piece.
import { takeAway, type Region } from 'laydown/form';
import { defaultMaterials, makeStencil } from 'laydown/stencil';
import { tell } from 'laydown/words';

const circle = (radius: number): Region => ({
  rings: [Float64Array.from({ length: 240 }, (_, i) => 50 + radius * (i % 2 ? Math.sin : Math.cos)((Math.PI * (i >> 1)) / 60))],
});
const stencil = makeStencil({
  shape: takeAway(circle(35), circle(20)),
  side: 'window',
  aperture: { minX: 0, minY: 0, maxX: 100, maxY: 100 },
  sheet: { minX: -20, minY: -20, maxX: 120, maxY: 120 },
  material: defaultMaterials.find((m) => m.id === 'film') ?? defaultMaterials[0],
  islands: 'bridge',
});
const { certificate, bridges, knife } = stencil;
console.log(
  `${bridges.length} bridges, ${knife.metres.toFixed(2)} m to cut, ${certificate.holds ? 'holds' : 'does not hold'}: ${tell(certificate.method)}`,
);
