import { srgbFromXyz, xyzFromLab, type Illuminant, type Lab } from '../../colour/index.ts';
import type { OverPicture, PartingPair, Plan, PlannedGrounds, PlannedLight, PlannedOverlap, PlannedPaper } from '../../plan/index.ts';
import { groundCube } from '../../print/index.ts';
import { asWritten, deltaE, say, share, type Saying } from '../../../words/say.ts';

type Lit = Pick<PlannedPaper, 'lights' | 'overlaps' | 'palette' | 'progressive' | 'swatch' | 'grounds'> & {
  /** The page knows only whether there is one. */
  readonly overPicture: OverPicture | boolean | null;
};

/** A paper as eyes that are used to a lamp see it; as it is where there is nothing to say of that lamp. */
export function underLamp<P extends Lit>(paper: P, lamp: Illuminant): P {
  const light = paper.lights.find((l) => l.lamp === lamp);
  if (!light) return paper;
  const overlaps = litOverlaps(light, paper.overlaps).map((o): PlannedOverlap => ({ ...o, possible: [o.srgb] }));
  const wordOf = new Map(overlaps.map((o) => [o.code, parseInt(o.srgb.slice(1), 16)]));
  const printed = overlaps.reduce((bits, o) => bits | o.code, 0);
  const palette = paper.palette.map((was, code) => {
    const rgb = wordOf.get(code & printed);
    return rgb === undefined ? was : (0xff000000 | ((rgb & 0xff) << 16) | (rgb & 0xff00) | (rgb >> 16)) >>> 0;
  });
  const [bare] = overlaps;
  return {
    ...paper,
    overlaps,
    palette,
    // Earlier runs stay as they are: of overlaps that the finished print has not, no lamp is known.
    progressive: paper.progressive.map((was, i) => (i === paper.progressive.length - 1 ? palette : was)),
    swatch: { lab: bare.lab, srgb: bare.srgb, inGamut: bare.inGamut },
    grounds: paper.grounds && groundsUnderLamp(paper.grounds, lamp),
    overPicture: typeof paper.overPicture === 'object' && paper.overPicture ? pictureUnderLamp(paper.overPicture, lamp) : paper.overPicture,
  };
}

function litOverlaps<O extends Pick<PlannedOverlap, 'code' | 'lab' | 'srgb' | 'inGamut'>>(
  light: PlannedLight,
  overlaps: readonly O[],
): O[] {
  return overlaps.map((overlap) => {
    const lit = light.overlaps.find((o) => o.code === overlap.code);
    if (!lit) return overlap;
    const { hex, inGamut } = srgbFromXyz(xyzFromLab(lit.lab));
    return { ...overlap, lab: lit.lab, srgb: hex, inGamut };
  });
}

/** The colours that a printed sheet is made of, and all overlaps on each. */
function groundsUnderLamp(grounds: PlannedGrounds, lamp: Illuminant): PlannedGrounds {
  return {
    ...grounds,
    colours: grounds.colours.map((ground) => {
      const light = ground.lights.find((l) => l.lamp === lamp);
      const bare = light?.overlaps.find((o) => o.code === 0);
      const was = ground.asRead;
      if (!light || !bare) return ground;
      // The ground is shown as the picture has it: it moves as far as the spectrum that stands for it.
      const lab = ground.lab.map((v, c) => v + bare.lab[c] - was[c]) as unknown as Lab;
      return { ...ground, lab, srgb: srgbFromXyz(xyzFromLab(lab)).hex, overlaps: litOverlaps(light, ground.overlaps) };
    }),
  };
}

const litPictures = new WeakMap<OverPicture, Map<Illuminant, OverPicture>>();

/** What the proof over an earlier print is painted from under a lamp: made when it is asked for, and kept. */
export function pictureUnderLamp(over: OverPicture, lamp: Illuminant): OverPicture {
  if (over.cube.lamp === lamp) return over;
  const known = litPictures.get(over) ?? new Map<Illuminant, OverPicture>();
  litPictures.set(over, known);
  let lit = known.get(lamp);
  if (!lit) known.set(lamp, (lit = { ...over, cube: groundCube(over.laid, over.rows, over.cube.nodes, lamp) }));
  return lit;
}

/** What changes most under a lamp, and how far, ΔE00; on a printed sheet, on which of its grounds. */
export function movesMost(
  paper: Pick<PlannedPaper, 'lights' | 'grounds'>,
  lamp: Illuminant,
): { readonly code: number; readonly ground: number | null; readonly moved: number } | null {
  const of = (lights: readonly PlannedLight[], ground: number | null): { code: number; ground: number | null; moved: number }[] =>
    (lights.find((l) => l.lamp === lamp)?.overlaps ?? []).map(({ code, moved }) => ({ code, ground, moved }));
  const all = paper.grounds ? paper.grounds.colours.flatMap((one, i) => of(one.lights, i)) : of(paper.lights, null);
  return all.reduce<(typeof all)[number] | null>((most, one) => (most && most.moved >= one.moved ? most : one), null);
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

/** An overlap by its runs, on a printed sheet with the ground it lies on. */
export function sayPlace(
  plan: Pick<Plan, 'layers'>,
  overlaps: readonly Pick<PlannedOverlap, 'code' | 'layers'>[],
  code: number,
  ground: number | null,
): Saying {
  const layers = overlaps.find((o) => o.code === code)?.layers ?? [];
  const names = layers.map((id) => plan.layers.find((l) => l.id === id)?.name ?? id).join(' + ');
  if (ground === null) return layers.length === 0 ? say('colour.barePaper') : asWritten(names);
  const values = { n: ground + 1 };
  return layers.length === 0 ? say('colour.groundItself', values) : say('colour.onGround', { ...values, what: asWritten(names) });
}

/** Two overlaps that match under one lamp only, in words. */
export function sayParting(
  plan: Pick<Plan, 'layers'>,
  overlaps: readonly Pick<PlannedOverlap, 'code' | 'layers'>[],
  pair: PartingPair,
): Saying {
  const [one, other] = pair.codes.map((code) => sayPlace(plan, overlaps, code, pair.ground));
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
