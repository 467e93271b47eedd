import type { AreaText, DeltaText, LengthText, ListText, NameText, SayingText, ShareText } from '../../text.ts';
import { many, which } from '../grammar.ts';

/** What a knife can cut. */
export const stencil = {
  // The usual materials.
  newsprint: 'Newsprint',
  coatedPaper: 'Coated paper',
  waxedPaper: 'Waxed paper',
  polyesterFilm: 'Polyester film',
  thinBoard: 'Thin board',

  // What would print.
  outsideImage: 'No part of the cut lies inside the image, so nothing would print.',
  pieceCoversAll: 'The piece covers the whole image, so nothing would print.',
  moveOrResize: 'Move the form into the image, or make it another size.',
  noOpeningLeft: 'Bridges and mends left no opening.',
  enlargeForm: 'Make the form larger.',
  islandsTooSmall: ({ n }: { n: number }) => `${many(n, 'island is', 'islands are')} smaller than a bridge; ink will print there.`,
  enlargeOrLoose: 'Make the form larger, or lay the islands as loose pieces.',

  // What was mended.
  strengthened: ({ n, material, first }: { n: number; material: SayingText; first: LengthText }) =>
    `The stencil was too thin for its material (${material}) and was made broader in ${many(n, 'place', 'places')}, ${which(n, 'at', 'the first at')} ${first}.`,
  keepFineParts: 'Look at the proof. To keep the fine parts, choose a firmer material or a larger form.',
  widened: ({ n, first }: { n: number; first: LengthText }) =>
    `${many(n, 'opening was', 'openings were')} too narrow for the knife and made wider, ${which(n, 'at', 'the first at')} ${first}.`,
  closed: ({ n, first }: { n: number; first: LengthText }) =>
    `${many(n, 'opening was', 'openings were')} too fine to be cut and closed, ${which(n, 'at', 'the first at')} ${first}.`,
  dropped: ({ n, first }: { n: number; first: LengthText }) =>
    `${many(n, 'hairline', 'hairlines')} of paper could not hold and ${n === 1 ? 'was' : 'were'} left out, ${which(n, 'at', 'the first at')} ${first}.`,
  muchLost: ({ lost }: { lost: ShareText }) => `Mending takes ${lost} of what is drawn: too fine for this material at this size.`,
  coarser: ({ n, first, area }: { n: number; first: LengthText; area: AreaText }) =>
    `In ${many(n, 'place', 'places')}, ${which(n, 'at', 'the first at')} ${first}, nothing finer could hold or be cut: what was too fine there went, ${area} in all.`,
  linesBroader: ({ n }: { n: number }) =>
    `This drawing is made of lines too fine for a knife: ${many(n, 'stretch', 'stretches')} of them became as broad as it can cut.`,
  linesTogether: ({ n, area, part }: { n: number; area: AreaText; part: ShareText }) =>
    `This drawing is made of lines too fine for a knife. Drawn as broad as it can cut they meet: ${many(n, 'field', 'fields')} between them ${n === 1 ? 'prints' : 'print'} too, ${area} or ${part} of all that prints.`,
  keepHairlines: 'Look at the proof. To keep them, make the form larger or draw them broader.',
  lookOrEnlarge: 'Look at the proof, or make the form larger.',
  marginTooSmall: ({ least }: { least: LengthText }) => `The sheet leaves less than ${least} around the image; it was made larger.`,
  widerMargin: 'Plan a wider margin of stencil around the image.',

  // Whether it holds.
  doesNotHold: ({ n, first, fault }: { n: number; first: LengthText; fault: SayingText }) =>
    `This stencil can’t be cut as it is: ${many(n, 'weak place', 'weak places')}, ${which(n, 'at', 'the first at')} ${first} (${fault}).`,
  mendFaults: 'Make the form larger, take fine parts away, choose a firmer material, or lay islands as loose pieces.',
  notCutAsItIs: 'A stencil that does not hold is not written as a cut file.',
  takeAnOffer: 'Take one of the ways out shown at Stencils, or mend the marked places.',
  offerClose: ({ n, first, area }: { n: number; first: LengthText; area: AreaText }) =>
    `Close ${many(n, 'opening', 'openings')}, ${which(n, 'at', 'the first at')} ${first}: ${area} less ink.`,
  offerCloseSeen: ({ n, first, area, shows }: { n: number; first: LengthText; area: AreaText; shows: DeltaText }) =>
    `Close ${many(n, 'opening', 'openings')}, ${which(n, 'at', 'the first at')} ${first}: ${area} less ink, seen as ΔE00 ${shows}.`,
  offerCloseAll: ({ area }: { area: AreaText }) => `Close every opening that no knife can cut: ${area} less ink.`,
  offerCloseAllSeen: ({ area, shows }: { area: AreaText; shows: DeltaText }) =>
    `Close every opening that no knife can cut: ${area} less ink, seen as ΔE00 ${shows}.`,
  offerCoarser: ({ more, less }: { more: AreaText; less: AreaText }) =>
    `Leave out all that is too fine, paper as well as openings: ${more} more ink, ${less} less.`,
  offerCoarserThere: ({ n, first, more, less }: { n: number; first: LengthText; more: AreaText; less: AreaText }) =>
    `Leave out what is too fine in ${many(n, 'place', 'places')}, ${which(n, 'at', 'the first at')} ${first}: ${more} more ink, ${less} less.`,
  offerDropAll: ({ area }: { area: AreaText }) => `Leave out all paper that is too fine to hold: ${area} more ink.`,
  offerDropAllSeen: ({ area, shows }: { area: AreaText; shows: DeltaText }) =>
    `Leave out all paper that is too fine to hold: ${area} more ink, seen as ΔE00 ${shows}.`,
  offerDrop: ({ n, first, area }: { n: number; first: LengthText; area: AreaText }) =>
    `Leave out ${many(n, 'detail', 'details')} of paper, ${which(n, 'at', 'the first at')} ${first}: ${area} more ink.`,
  offerDropSeen: ({ n, first, area, shows }: { n: number; first: LengthText; area: AreaText; shows: DeltaText }) =>
    `Leave out ${many(n, 'detail', 'details')} of paper, ${which(n, 'at', 'the first at')} ${first}: ${area} more ink, seen as ΔE00 ${shows}.`,
  offerFirmer: ({ material, paper, opening }: { material: SayingText; paper: LengthText; opening: LengthText }) =>
    `Cut it from a firmer material (${material}: bridges of ${paper}, openings of ${opening}).`,
  offerLarger: ({ by }: { by: ShareText }) => `Make the drawing larger, to ${by} of its size.`,
  offerLargerThanImage: ({ by }: { by: ShareText }) =>
    `Make the drawing larger, to ${by} of its size; it will reach past the image, which has to grow with it.`,
  neckTooThin: 'a neck too thin',
  pieceTooThin: 'a piece too thin all over',
  pointTooThin: 'a long thin point',
  openingTooNarrow: 'an opening too narrow',
  partUnheld: 'a part that nothing holds',
  provenBy: ({ pixel, paper, opening }: { pixel: LengthText; paper: LengthText; opening: LengthText }) =>
    `Shrunk by half the least width, what is left of the outline must hang together. What discs of ${paper} (paper) and ${opening} (openings) cannot reach is looked at in pixels of ${pixel}: only points that taper may be left.`,
  nothingCut: 'Nothing is cut.',

  // Thick stencils.
  ridgeCrossed: ({
    layer,
    material,
    thickness,
    crossed,
  }: {
    layer: NameText;
    material: SayingText;
    thickness: LengthText;
    crossed: ListText;
  }) =>
    `The stencil of ${layer} is thick (${material}, ${thickness}) and leaves a ridge of ink along its edges. Later runs print over that: ${crossed}.`,
  ridgeAlong: ({ layer, along }: { layer: NameText; along: LengthText }) => `${layer} along ${along}`,
  thinnerOrLater: ({ layer }: { layer: NameText }) => `Cut ${layer} from thinner material, or print it after them.`,

  // Stock.
  largerThanStock: ({ name, size, stock }: { name: NameText; size: LengthText; stock: LengthText }) =>
    `“${name}” (${size}) does not fit on a sheet of ${stock}.`,
  largerStock: 'Use larger stock, or leave a smaller margin around the image.',

  // As written for a knife or a machine.
  weakAsWritten: ({ places }: { places: ListText }) => `The cut file would not hold together: ${places}.`,
  weakAt: ({ at, width }: { at: LengthText; width: LengthText }) => `at ${at} (${width} wide)`,
  enlargeThere: 'Make the form a little larger there, or choose a firmer material.',
  kerfTooWide: ({ kerf }: { kerf: LengthText }) => `Some of what drops out is narrower than the ${kerf} that the machine takes away.`,
  finerTool: 'Take a finer tool, make the form larger, or cut this one by hand (no kerf).',
};
