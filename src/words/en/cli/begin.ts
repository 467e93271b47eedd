import type { ListText, NameText, SayingText } from '../../text.ts';

/** The smallest job, and what is said of a field. */
export const begin = {
  form: 'Hill',
  first: 'Below',
  second: 'Above',
  paper: 'Office paper',
  stock: 'Coated paper',
  note: 'Begin here: change a field, then check. The inks are starter inks from published values, not yours; put in your own drawdowns. Lengths are in mm (names ending in Mm), films in microns, shares from 0 to 1.',
  written: ({ file }: { file: NameText }) => `${file} is written. What one touches first:`,
  next: ({ check, explain }: { check: SayingText; explain: SayingText }) => `What a field means: ${explain}. Then: ${check}`,
  marked: ({ layer, what }: { layer: NameText; what: ListText }) => `${layer}: ${what}. It stays as it is; what would change it is told.`,
  wayTaken: ({ layer, way }: { layer: NameText; way: SayingText }) => `${layer}: ${way}. Written into the job.`,
  unmarked: ({ layer, what }: { layer: NameText; what: ListText }) => `${layer}: no longer ${what}.`,
  unitIs: ({ unit }: { unit: NameText }) => `Unit: ${unit}`,
  mayBe: ({ what }: { what: NameText }) => `May be: ${what}`,
  leftOut: ({ value }: { value: NameText }) => `Left out: ${value}`,
  example: ({ example }: { example: NameText }) => `Example: ${example}`,
};
