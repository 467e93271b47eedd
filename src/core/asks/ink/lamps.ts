import { srgbFromXyz, xyzFromLab, type Illuminant } from '../../colour/index.ts';
import type { PartingPair, Plan, PlannedOverlap, PlannedPaper } from '../../plan/index.ts';
import { asWritten, deltaE, say, share, type Saying } from '../../../words/say.ts';

type Lit = Pick<PlannedPaper, 'lights' | 'overlaps' | 'palette' | 'swatch'>;

/** A paper as eyes that are used to a lamp see it; as it is where there is nothing to say of that lamp. */
export function underLamp<P extends Lit>(paper: P, lamp: Illuminant): P {
  const light = paper.lights.find((l) => l.lamp === lamp);
  if (!light) return paper;
  const overlaps = paper.overlaps.map((overlap): PlannedOverlap => {
    const lit = light.overlaps.find((o) => o.code === overlap.code);
    if (!lit) return overlap;
    const { hex, inGamut } = srgbFromXyz(xyzFromLab(lit.lab));
    return { ...overlap, lab: lit.lab, srgb: hex, inGamut, possible: [hex] };
  });
  const wordOf = new Map(overlaps.map((o) => [o.code, parseInt(o.srgb.slice(1), 16)]));
  const printed = overlaps.reduce((bits, o) => bits | o.code, 0);
  const palette = paper.palette.map((was, code) => {
    const rgb = wordOf.get(code & printed);
    return rgb === undefined ? was : (0xff000000 | ((rgb & 0xff) << 16) | (rgb & 0xff00) | (rgb >> 16)) >>> 0;
  });
  const [bare] = overlaps;
  return { ...paper, overlaps, palette, swatch: { lab: bare.lab, srgb: bare.srgb, inGamut: bare.inGamut } };
}

/** What a lamp is called. */
export function lampName(lamp: Illuminant): Saying {
  switch (lamp) {
    case 'D50':
      return say('colour.lampD50');
    case 'D65':
      return say('colour.lampD65');
    case 'A':
      return say('colour.lampA');
    case 'LED-B1':
      return say('colour.lampWarm');
    case 'LED-B3':
      return say('colour.lampNeutral');
    case 'LED-B5':
      return say('colour.lampCold');
  }
}

/** Two overlaps that match under one lamp only, in words. */
export function sayParting(
  plan: Pick<Plan, 'layers'>,
  overlaps: readonly Pick<PlannedOverlap, 'code' | 'layers'>[],
  pair: PartingPair,
): Saying {
  const [one, other] = pair.codes.map((code) => {
    const layers = overlaps.find((o) => o.code === code)?.layers ?? [];
    return layers.length === 0
      ? say('colour.barePaper')
      : asWritten(layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' + '));
  });
  return say('colour.parts', {
    one,
    other,
    alike: lampName(pair.alikeUnder),
    apart: lampName(pair.apartUnder),
    near: deltaE(pair.alikeDeltaE),
    far: deltaE(pair.apartDeltaE),
    chance: share(pair.chance, 0),
  });
}
