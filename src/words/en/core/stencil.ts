import type { LengthText, ListText, NameText, SayingText } from '../../text.ts';
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
  lookOrEnlarge: 'Look at the proof, or make the form larger.',
  marginTooSmall: ({ least }: { least: LengthText }) => `The sheet leaves less than ${least} around the image; it was made larger.`,
  widerMargin: 'Plan a wider margin of stencil around the image.',

  // Whether it holds.
  doesNotHold: ({ n, first, fault }: { n: number; first: LengthText; fault: SayingText }) =>
    `This stencil can’t be cut as it is: ${many(n, 'weak place', 'weak places')}, ${which(n, 'at', 'the first at')} ${first} (${fault}).`,
  mendFaults: 'Make the form larger, take fine parts away, choose a firmer material, or lay islands as loose pieces.',
  neckTooThin: 'a neck too thin',
  pieceTooThin: 'a piece too thin all over',
  pointTooThin: 'a long thin point',
  openingTooNarrow: 'an opening too narrow',
  partUnheld: 'a part that nothing holds',
  provenBy: ({ pixel, paper, opening }: { pixel: LengthText; paper: LengthText; opening: LengthText }) =>
    `The outline is turned into pixels of ${pixel}, and the distance to the nearest edge is worked out exactly: discs of ${paper} (paper) and ${opening} (openings) must reach everything but points.`,
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
};
