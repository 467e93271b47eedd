/** The true-size sheet, shared by forms and stencils. */
export const sheet = {
  zoom: 'How near to look',
  nearer: 'Nearer',
  farther: 'Farther',
  percent: (n: number) => `${n} %`,
  fit: 'All of it',
  trueSize: 'True size',
  screenNotMeasured: 'Is true size true? This screen is not measured yet',
  screenMeasured: 'This screen is measured; measure again',
  measureWith: 'Measure with',
  card: 'A bank card',
  ruler: 'A ruler',
  cardHow:
    'Hold a bank card (85.60 × 53.98 mm, as ISO/IEC 7810 sets it) on the frame below and slide until its width fits. This machine remembers it.',
  rulerHow: (length: string) => `Hold a ruler on the bar below and slide until it is ${length} long. This machine remembers it.`,
  slideUntilItFits: 'Slide until it fits',
  lengthInPixels: 'Its length on the screen, in pixels',
  printedTrue: '100 mm, true size when printed at 100 %',
  printedSmaller: (times: string) => `100 mm of the print, shown ${times} times smaller`,
  why: 'Why?',
};
