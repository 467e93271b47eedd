import type { NameText } from '../../text.ts';

/** Pictures that are read. */
export const image = {
  fileEmpty: 'The file is empty.',
  chooseAnother: 'Choose another file, or copy this one again from where it came.',
  notPicture: 'Laydown can’t read this as a picture.',
  formatsRead: 'Save it as JPEG, PNG, WebP or TIFF and choose that file.',
  sizeMissing: ({ format }: { format: NameText }) => `The ${format} file is damaged: it gives no size.`,
  cutShort: ({ format }: { format: NameText }) => `The ${format} file is damaged or cut short.`,
  resave: 'Open it in an image program and save it again.',
  tooManyPixels: ({ megapixels, most }: { megapixels: number; most: number }) =>
    `The picture has ${megapixels} megapixels; Laydown reads up to ${most}.`,
  scaleDown: 'Scale it down first: 10 megapixels hold more than any hand-cut stencil can show.',
  seeThrough: 'Parts of the picture are see-through; they stay bare paper.',
  fillFirst: 'Fill them first if something should print there.',
  cmyk: 'The picture is in printing colours (CMYK), made for another press and its inks.',
  saveAsRgb: 'Save it as RGB, with its colour profile, and choose that file.',
  jpegKind: 'Laydown reads JPEG files in grey or in RGB, eight bits a colour; this is another kind.',
  animated: 'The WebP file holds a picture that moves, not a single one.',
  animatedFirst: 'The file holds a picture that moves; only its first one is read.',
  saveOnePicture: 'Save the one that is to be printed as a file of its own.',
  tooLong: 'Reading the picture took longer than any picture should, so it was stopped.',
  tooMuchMemory: 'The picture needs more memory than this machine gives it.',
  tiffWithoutImage: 'The TIFF file is damaged or holds no image.',
  tiffKind: 'Laydown reads TIFF files in grey, in RGB or with a palette; this is another kind.',
  tiffPacking: 'The TIFF file is damaged or packed in a way that Laydown can’t read.',
  saveUnpacked: 'Save it again without compression, or as PNG.',
  readerNotLoaded: ({ format }: { format: NameText }) => `The part of Laydown that reads ${format} files is not loaded.`,
  loadAgain: 'Load the page again. If that doesn’t help, save the picture as PNG.',
  // Colour profiles; `takenAsSrgb` follows each.
  profilesNotLoaded: 'The part of Laydown that reads colour profiles is not loaded.',
  profileDamaged: 'The colour profile in the picture is damaged.',
  profileNotRgb: ({ space }: { space: NameText }) => `The colour profile in the picture is for ${space} colours, not for RGB.`,
  profileUnknown: 'The colour profile in the picture is for an unknown kind of colours, not for RGB.',
  profileUseless: 'The colour profile in the picture can’t be used.',
  takenAsSrgb: 'The picture is taken as sRGB.',
  convertToSrgb: 'If its colours look wrong, convert it to sRGB and choose that file.',
};
