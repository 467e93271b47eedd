import { z } from 'zod';

/** The studio's ink shelf: a document of its own that jobs draw from. Unknown fields are kept. */
export const currentShelfVersion = 1;

const id = z.string().regex(/^[a-z0-9][a-z0-9._-]{0,63}$/);
const name = z.string().min(1).max(200);
const note = z.string().max(4000).optional();
const date = z.string().max(40).optional();
const triple = z.tuple([z.number(), z.number(), z.number()]);
const sigma = z.number().min(0).max(30).optional();
const grams = z.number().gt(0).max(1_000_000);

export const ShelfReadingSchema = z.discriminatedUnion('kind', [
  z.looseObject({ kind: z.literal('spectrum'), values: z.array(z.number()).length(36), sigma }),
  z.looseObject({ kind: z.literal('xyz'), xyz: triple, sigma }),
  z.looseObject({ kind: z.literal('lab'), lab: triple, sigma }),
  z.looseObject({ kind: z.literal('photo'), lab: triple, sigma: z.number().min(0).max(30) }),
]);

const SourceSchema = z.discriminatedUnion('from', [
  z.looseObject({ from: z.literal('one-ground'), ground: ShelfReadingSchema, over: ShelfReadingSchema }),
  z.looseObject({
    from: z.literal('two-grounds'),
    white: ShelfReadingSchema,
    overWhite: ShelfReadingSchema,
    black: ShelfReadingSchema,
    overBlack: ShelfReadingSchema,
  }),
  z.looseObject({
    from: z.literal('ladder'),
    ground: ShelfReadingSchema,
    steps: z
      .array(z.looseObject({ share: z.number().gt(0).max(1), over: ShelfReadingSchema }))
      .min(1)
      .max(24),
  }),
  z.looseObject({ from: z.literal('clear') }),
]);

const LotSchema = z.looseObject({
  /** As the studio calls it: a number on the lid, a date. */
  lot: z.string().min(1).max(100),
  date,
  source: SourceSchema,
  /** How it is known where nobody read it: as published, or matched by eye. Left out: read. */
  known: z.enum(['published', 'by-eye']).optional(),
  drawdownMicrons: z.number().gt(0).max(1000).optional(),
  gramsLeft: z.number().min(0).max(1_000_000).optional(),
  note,
});

const ShelfInkSchema = z.looseObject({
  id,
  name,
  role: z.enum(['ink', 'transparent-base', 'extender-base', 'retarder']).default('ink'),
  densityGPerMl: z.number().min(0.7).max(3).default(1.1),
  /** Oldest first; the last is in use. */
  lots: z.array(LotSchema).min(1).max(500),
  note,
});

const PartSchema = z.looseObject({ ink: id, lot: z.string().max(100).optional(), grams });

const PotSchema = z.looseObject({
  id,
  name,
  date,
  wanted: triple.optional(),
  paper: id.optional(),
  parts: z.array(PartSchema).min(1).max(50),
  /** Every drawdown since, and what was added before it. */
  rounds: z
    .array(z.looseObject({ date, added: z.array(PartSchema).max(50).default([]), reading: ShelfReadingSchema }))
    .max(200)
    .default([]),
  note,
});

export const ShelfSchema = z.looseObject({
  kind: z.literal('laydown-ink-shelf'),
  schemaVersion: z.literal(currentShelfVersion),
  studio: z.string().max(300).default(''),
  inks: z.array(ShelfInkSchema).max(2000).default([]),
  papers: z
    .array(z.looseObject({ id, name, reading: ShelfReadingSchema, date, note }))
    .max(2000)
    .default([]),
  pots: z.array(PotSchema).max(20_000).default([]),
});

export type InkShelf = z.output<typeof ShelfSchema>;
export type ShelfInk = InkShelf['inks'][number];
export type ShelfLot = ShelfInk['lots'][number];
export type ShelfPotRecord = InkShelf['pots'][number];
