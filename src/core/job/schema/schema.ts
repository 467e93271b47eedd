import type { Format } from '../../faults.ts';
import { z } from 'zod';
import { plainLine, plainNote } from '../../plain-text.ts';
import { CameraSchema } from './camera.ts';
import { currentSchemaVersion, mostCopies, mostLayers, mostMarks, mostParts, mostPins, mostStrokePoints } from './limits.ts';

export { currentSchemaVersion, mostCopies, mostLayers, mostMarks, mostStrokePoints };

/**
 * The Job: what the printmaker decided, and nothing computed from it. This file is the one typed description of the
 * document; the JSON Schema in docs/ is made from it. Unknown fields are kept (loose objects), so a Job made by a
 * later Laydown of the same version loses nothing when it passes through this one.
 * Lengths in mm, thickness of films in microns, shares and strengths 0..1, angles in degrees clockwise.
 */
const id = z.string().regex(/^[a-z0-9][a-z0-9._-]{0,63}$/, 'short-name' satisfies Format);
const line = (most: number): z.ZodString =>
  z
    .string()
    .max(most)
    .regex(plainLine, 'plain-line' satisfies Format);
const name = line(200).min(1);
const note = z
  .string()
  .max(4000)
  .regex(plainNote, 'plain-note' satisfies Format)
  .optional();
const mm = z.number().min(-5000).max(5000);
const sizeMm = z.number().gt(0).max(5000);
const share = z.number().min(0).max(1);
const attachment = z
  .string()
  .min(1)
  .max(300)
  .regex(plainLine, 'plain-line' satisfies Format)
  .regex(/^(?!\/)(?!.*(^|\/)\.\.(\/|$))[^\\:]+$/, 'file-inside' satisfies Format);
const point = z.tuple([mm, mm]);

const ReadingSchema = z.discriminatedUnion('kind', [
  z.looseObject({ kind: z.literal('spectrum'), values: z.array(z.number()).length(36), sigma: z.number().min(0).max(20).optional(), note }),
  z.looseObject({
    kind: z.literal('xyz'),
    xyz: z.tuple([z.number(), z.number(), z.number()]),
    sigma: z.number().min(0).max(20).optional(),
    note,
  }),
  z.looseObject({
    kind: z.literal('lab'),
    lab: z.tuple([z.number(), z.number(), z.number()]),
    sigma: z.number().min(0).max(20).optional(),
    note,
  }),
  z.looseObject({ kind: z.literal('photo'), lab: z.tuple([z.number(), z.number(), z.number()]), sigma: z.number().min(0).max(30), note }),
]);

/** Which of a drawing's colours are the form. Left out: Laydown guesses, and says so. */
const ReadSchema = z.looseObject({
  /** silhouette: everything drawn; dark: what is dark; colours: what shows one of `colours`. */
  what: z.enum(['silhouette', 'dark', 'colours']),
  colours: z
    .array(z.string().regex(/^#[0-9a-fA-F]{6}$/, 'colour' satisfies Format))
    .min(1)
    .max(64)
    .optional(),
  /** White on top of something: bare paper, or a shape as well. */
  white: z.enum(['paper', 'shape']).optional(),
  /** How dark a thing must be, or how much of its full strength must be seen where it fades. */
  threshold: z.number().gt(0).lt(1).optional(),
});

/** A shape that Laydown makes itself. */
const MadeSchema = z.discriminatedUnion('kind', [
  z.looseObject({ kind: z.enum(['flat', 'band']), widthMm: sizeMm, heightMm: sizeMm }),
  z.looseObject({ kind: z.literal('circle'), acrossMm: sizeMm }),
  z.looseObject({ kind: z.literal('ring'), acrossMm: sizeMm, bandMm: sizeMm }),
  z.looseObject({
    kind: z.literal('comb'),
    stripes: z.int().min(1).max(500),
    stripeMm: sizeMm,
    gapMm: sizeMm,
    lengthMm: sizeMm,
    /** Joins the stripes at one end; 0: they stand apart. */
    backMm: z.number().min(0).max(5000).default(0),
  }),
  z.looseObject({
    kind: z.literal('torn'),
    widthMm: sizeMm,
    heightMm: sizeMm,
    edges: z.enum(['top', 'both', 'all']).default('top'),
    /** How far the edge wanders. */
    roughMm: z.number().gt(0).max(500).default(8),
    seed: z.int().default(1),
  }),
  z.looseObject({
    kind: z.literal('wave'),
    widthMm: sizeMm,
    heightMm: sizeMm,
    edges: z.enum(['top', 'both']).default('top'),
    lengthMm: sizeMm,
    swingMm: sizeMm,
  }),
  z.looseObject({
    kind: z.literal('grid'),
    columns: z.int().min(1).max(200),
    rows: z.int().min(1).max(200),
    cellMm: sizeMm,
    gapMm: z.number().min(0).max(5000),
  }),
  z.looseObject({
    kind: z.literal('letters'),
    text: z.string().min(1).max(500),
    capHeightMm: sizeMm,
    weight: z.enum(['regular', 'semibold', 'bold']).default('bold'),
    /** Width of the bridges that hold what is inside an O or an A; 0: none. */
    bridgeMm: z.number().min(0).max(200).default(2.5),
    spaceMm: z.number().min(-50).max(500).default(0),
  }),
]);

const FormSchema = z.looseObject({
  id,
  name,
  /** A drawing in the job's folder, an outline in mm, or a made shape. One of the three. */
  drawing: attachment.optional(),
  read: ReadSchema.optional(),
  made: MadeSchema.optional(),
  outline: z.array(z.array(point).min(3)).min(1).optional(),
  /** True size; the other side follows. Left out: the drawing's own size. */
  widthMm: sizeMm.optional(),
  heightMm: sizeMm.optional(),
  note,
});

const RepeatSchema = z.discriminatedUnion('kind', [
  z.looseObject({ kind: z.literal('rows'), columns: z.int().min(1).max(500), rows: z.int().min(1).max(500), stepXMm: mm, stepYMm: mm }),
  z.looseObject({ kind: z.literal('around'), count: z.int().min(1).max(500), centreMm: point, turnForms: z.boolean().default(true) }),
  z.looseObject({
    kind: z.literal('scatter'),
    count: z.int().min(1).max(2000),
    seed: z.int(),
    leastMm: z.number().min(0).max(1000),
    turn: z.boolean().default(true),
  }),
]);

const PartSchema = z.looseObject({
  form: id,
  /** add: united with what is there; takeAway: cut out of it; common: only what both cover. */
  how: z.enum(['add', 'takeAway', 'common']).default('add'),
  /** Where the middle of the form's box lies, from the top left corner of the image. */
  xMm: mm,
  yMm: mm,
  angleDeg: z.number().min(-3600).max(3600).default(0),
  scale: z.number().gt(0).max(1000).default(1),
  mirror: z.boolean().default(false),
  repeat: RepeatSchema.optional(),
});

const CutSchema = z.looseObject({
  id,
  name,
  material: id.optional(),
  /** Its sheet's own size, the image in its middle; left out: the image and the job's margin all round. */
  sheetMm: z.tuple([sizeMm, sizeMm]).optional(),
  parts: z.array(PartSchema).min(1).max(mostParts),
  note,
});

const BridgePinSchema = z.looseObject({
  fromMm: point,
  toMm: point,
  viaMm: z.array(point).max(5000).optional(),
  widthMm: sizeMm.optional(),
});

const MeshSchema = z.looseObject({
  perCm: z.number().gt(0).max(300),
  threadMicrons: z.number().gt(0).max(500),
  openingMicrons: z.number().gt(0).max(2000).optional(),
  openPercent: z.number().gt(0).lt(100).optional(),
  thicknessMicrons: z.number().gt(0).max(1000).optional(),
  theoreticalCm3PerM2: z.number().gt(0).max(1000).optional(),
});

/** A run that carries tone: its cut is where the tone lies, and its screen is exposed through a film positive. */
const ToneSchema = z.looseObject({
  /** A picture in the job's folder that covers the image; black is full ink. Left out: a flat tint. */
  picture: attachment.optional(),
  /** What the flat tint covers on the film. */
  share: share.optional(),
  /** Whether the picture says what the film covers, as a split writes it, or how light the print should be. */
  reads: z.enum(['coverage', 'lightness']).default('coverage'),
  by: z.enum(['dots', 'grain']).default('dots'),
  shape: z.enum(['round', 'ellipse', 'line']).default('round'),
  /** Left out: what the mesh holds, and the best of its angles. */
  rulingPerCm: z.number().min(2).max(100).optional(),
  angleDeg: z.number().min(-3600).max(3600).optional(),
  /** The smallest dot and the smallest hole that the screen holds; left out: what mesh and thread allow. */
  leastDotMicrons: z.number().gt(0).max(2000).optional(),
  /** How long its screen is exposed, as a test strip showed. */
  exposeSeconds: z.number().gt(0).max(36_000).optional(),
});

const LayerSchema = z.looseObject({
  id,
  name,
  cut: id,
  side: z.enum(['window', 'piece']),
  /** null: open, not decided yet. */
  ink: id.nullable(),
  /** Volume share of the ink in the pot; the rest is base. */
  strength: share.default(1),
  /** Which base the pot is let down with; left out: a clear one. */
  base: id.optional(),
  /** Several bases in one pot, a transparent and an extender one: what is no ink, shared out by volume. Takes the place of `base`. */
  bases: z
    .array(z.looseObject({ ink: id, share: z.number().gt(0).max(1) }))
    .min(1)
    .max(4)
    .optional(),
  tone: ToneSchema.optional(),
  /** Prints this much farther out all round than its cut (less: choked), so that neighbours overlap. Needs a cut of its own. */
  spreadMm: z.number().min(-10).max(10).default(0),
  /** Gap under the mesh in this run alone; left out: the screen's. Another gap prints the image at another size. */
  offContactMm: z.number().min(0).max(50).optional(),
  /** The mesh of this run alone: a screen of its own. Left out: the job's screen. */
  mesh: MeshSchema.optional(),
  islands: z.enum(['bridge', 'loose', 'drop']).optional(),
  bridgesBy: z.enum(['least-seen', 'shortest']).default('least-seen'),
  pinnedBridges: z.array(BridgePinSchema).max(mostPins).optional(),
  noBridge: z
    .array(z.looseObject({ atMm: point, radiusMm: sizeMm }))
    .max(mostPins)
    .optional(),
  /** Openings that may close because no knife can cut them: a point in or beside each, or a circle that holds them. */
  closings: z
    .array(z.looseObject({ atMm: point, withinMm: sizeMm.optional() }))
    .max(mostPins)
    .optional(),
  /** Details of paper that may go, so that ink prints there: a point in or beside each, or a circle that holds them. */
  drops: z
    .array(z.looseObject({ atMm: point, withinMm: sizeMm.optional() }))
    .max(mostPins)
    .optional(),
  /** Left out of the print for now. */
  off: z.boolean().default(false),
  note,
});

const inkShared = {
  id,
  name,
  densityGPerMl: z.number().min(0.7).max(3).default(1.1),
  /** Wet film of the drawdown that was read. Left out: as thick as the print. */
  drawdownMicrons: z.number().gt(0).max(1000).optional(),
  role: z.enum(['ink', 'transparent-base', 'extender-base', 'retarder']).default('ink'),
  /** How it is known where nobody read it: as published, or matched by eye. Left out: read. */
  known: z.enum(['published', 'by-eye']).optional(),
  /** What was taken for it before it was read: told against the reading. */
  guess: z.looseObject({ known: z.enum(['published', 'by-eye']), over: ReadingSchema }).optional(),
  /** What is left of it in its jar, for recipes from leftovers. */
  leftGrams: z.number().min(0).max(1_000_000).optional(),
  note,
};
const InkSchema = z.discriminatedUnion('from', [
  z.looseObject({ from: z.literal('one-ground'), ...inkShared, ground: ReadingSchema, over: ReadingSchema }),
  z.looseObject({
    from: z.literal('two-grounds'),
    ...inkShared,
    white: ReadingSchema,
    overWhite: ReadingSchema,
    black: ReadingSchema,
    overBlack: ReadingSchema,
  }),
  z.looseObject({
    from: z.literal('ladder'),
    ...inkShared,
    ground: ReadingSchema,
    steps: z
      .array(z.looseObject({ share, over: ReadingSchema }))
      .min(1)
      .max(24),
  }),
  z.looseObject({
    from: z.literal('mix'),
    ...inkShared,
    parts: z
      .array(z.looseObject({ ink: id, parts: z.number().gt(0).max(100000) }))
      .min(1)
      .max(24),
  }),
  z.looseObject({ from: z.literal('clear'), ...inkShared }),
]);

const PaperSchema = z.looseObject({
  id,
  name,
  reading: ReadingSchema,
  widthMm: sizeMm,
  heightMm: sizeMm,
  count: z.int().min(0).max(10000),
  /** Prints of the edition wanted on it; left out: shared out by the sheets at hand. */
  wantedPrints: z.int().min(0).max(10000).optional(),
  thicknessMm: z.number().gt(0).max(10).default(0.3),
  grain: z.enum(['along-width', 'along-height', 'unknown']).default('unknown'),
  edge: z.enum(['cut', 'torn']).default('cut'),
  /** How much of the ink's water it takes up: ink on it dries sooner or later. */
  absorbency: z.enum(['low', 'usual', 'high']).default('usual'),
  /** It goes wavy where much wet ink lies. */
  cockles: z.boolean().default(false),
  /** The sheet it is bought in; left out: bought cut to size. */
  parent: z.looseObject({ widthMm: sizeMm, heightMm: sizeMm }).optional(),
  /** Where the image's top left corner lies on the sheet; left out: in the middle. */
  imageAtMm: point.optional(),
  /** A sheet that already carries a print: its picture covers the image area unless placed. */
  printed: z.looseObject({ picture: attachment, atMm: point.optional(), widthMm: sizeMm.optional(), note }).optional(),
  note,
});

const ScreenSchema = z.looseObject({
  insideWidthMm: sizeMm,
  insideHeightMm: sizeMm,
  mesh: MeshSchema,
  hinge: z.enum(['top', 'bottom', 'left', 'right']).default('top'),
  offContactMm: z.number().min(0).max(50).optional(),
  hingeLiftMm: z.number().min(0).max(300).optional(),
  tensionNPerCm: z.number().gt(0).max(100).optional(),
  squeegeeMm: sizeMm.optional(),
  /** Share of the mesh's theoretical volume that reaches the paper. */
  transfer: z.tuple([z.number().gt(0).max(1.5), z.number().gt(0).max(1.5)]).optional(),
  /** Board laid under the front of the frame, and what it is. */
  riserStepMm: z.number().gt(0).max(50).optional(),
  note,
  /** Of the studio's tape. */
  tapeWidthMm: z.number().min(10).max(200).optional(),
});

/** How the films are laid, which decides how one lies on another: dried between coats, as by hand, unless said otherwise. */
const PressSchema = z.looseObject({ films: z.enum(['dried-between', 'wet-on-wet', 'unknown']).default('dried-between') });

const MaterialSchema = z.looseObject({
  id,
  name,
  thicknessMm: z.number().gt(0).max(10),
  leastBridgeMm: z.number().gt(0).max(50),
  leastOpeningMm: z.number().gt(0).max(50),
  prints: z.tuple([z.number().min(0), z.number().min(0)]).optional(),
  washable: z.boolean().default(false),
  /** The size it is bought in: stencils are laid side by side on it. Left out: each is cut from a sheet of its own. */
  stock: z
    .looseObject({
      widthMm: sizeMm,
      heightMm: sizeMm,
      /** Nothing may lie turned. */
      grainMatters: z.boolean().default(false),
      /** Left free along the edges: bruised, or out of the machine's reach. */
      marginMm: z.number().min(0).max(100).default(0),
    })
    .optional(),
  /** Width that a cutting machine takes away; cut files run half of it inside what drops out. A knife by hand takes nothing. */
  kerfMm: z.number().min(0).max(5).optional(),
});

/** Register test sheets as read: which lines of the scales meet, across and down, at each place. */
const TestSheetsSchema = z.looseObject({
  /** Size of the image that the test was drawn for: it says where the places lie. */
  imageMm: z.tuple([sizeMm, sizeMm]),
  /** What one line of the scales stands for. */
  readsMm: z.number().gt(0).max(5),
  readings: z
    .array(
      z.looseObject({
        sheet: z.int().min(1).max(1000),
        place: line(40).min(1),
        across: z.number().min(-50).max(50).optional(),
        down: z.number().min(-50).max(50).optional(),
      }),
    )
    .max(4000)
    .default([]),
});

const RegisterSchema = z.looseObject({
  method: z.enum(['stops', 'hinged-sheet', 'pins', 'by-eye']).default('stops'),
  /** The studio's own figure: standard deviation of one layer, mm. */
  sigmaMm: z.number().min(0).max(20).optional(),
  /** The same from test sheets, in its parts: takes the place of `sigmaMm`. */
  measured: z
    .looseObject({
      xMm: z.number().min(0).max(20),
      yMm: z.number().min(0).max(20),
      turnDeg: z.number().min(0).max(10).default(0),
      sheets: z.int().min(3).max(1000).optional(),
    })
    .optional(),
  testSheets: TestSheetsSchema.optional(),
  humidityPercent: z.tuple([z.number().min(0).max(100), z.number().min(0).max(100)]).optional(),
});

/** What the record says beyond the plan; what is left out stays a line to fill in by hand. */
const RecordSchema = z.looseObject({
  signature: line(300).optional(),
  printer: line(300).optional(),
  printedFrom: line(40).optional(),
  printedTo: line(40).optional(),
  /** What became of the stencils. */
  master: z.enum(['kept', 'cancelled', 'destroyed', 'worn out']).optional(),
  otherEditions: line(1000).optional(),
  posthumous: z.boolean().optional(),
});

const EditionSchema = z.looseObject({
  target: z.int().min(0).max(10000).default(12),
  certainty: z.number().gt(0).lt(1).default(0.9),
  spoilagePerRun: z.number().min(0).lt(1).default(0.05),
  setUpSheets: z.int().min(0).max(1000).default(3),
  artistsProofShare: share.default(0.1),
  batProofs: z.int().min(0).max(20).default(1),
  printersProofs: z.int().min(0).max(200).default(1),
  horsCommerce: z.int().min(0).max(200).default(0),
  /** The paper that all proofs are taken from; left out: shared out like the edition. */
  proofsOn: id.optional(),
  papersAre: z.enum(['sub-editions', 'varied']).default('sub-editions'),
  year: z.int().min(1400).max(3000).optional(),
  workshop: line(300).optional(),
  record: RecordSchema.prefault({}),
  /** Sheets set apart on purpose, by the name pencilled on their back. */
  setApart: z.record(line(20).min(1), z.enum(['bat', 'state', 'colour-trial', 'set-up', 'cancellation'])).default({}),
});

const DaySchema = z.looseObject({
  startHour: z.number().min(0).max(24).default(9),
  endHour: z.number().min(0).max(24).default(17),
  pullsPerHour: z.number().gt(0).max(1000).default(40),
  setUpMinutes: z.number().min(0).max(600).default(35),
  cleanMinutes: z.number().min(0).max(600).default(18),
  dryMinutes: z.number().min(0).max(5000).default(45),
  rackPlaces: z.int().min(0).max(5000).default(40),
  screens: z.int().min(1).max(50).default(1),
  humidityPercent: z.number().min(0).max(100).default(50),
  /** People at work: one pulls; the others rack, wash, mix and set up. */
  hands: z.int().min(1).max(6).default(1),
  /** Pace with someone racking the sheets; left out: half as many again as alone. */
  pullsPerHourHelped: z.number().gt(0).max(1000).optional(),
  /** When the meal begins, and how long it takes; 0 minutes: none. */
  mealHour: z.number().min(0).max(24).default(12.5),
  mealMinutes: z.number().min(0).max(300).default(45),
  /** Runs begun on one day, at most. */
  mostRunsPerDay: z.int().min(1).max(50).default(3),
  /** A washed screen must dry so long before it is taped again. */
  screenDryMinutes: z.number().min(0).max(600).default(30),
  /** A drawdown is judged dry: mixed and drawn down the day before, or on the day itself by someone who knows the pot. */
  mixing: z.enum(['day-before', 'same-day']).default('day-before'),
});

const TargetSchema = z.looseObject({
  layers: z.array(id),
  /** What the film of each of these layers covers there, where it is a tone. Left out: all lie solid. */
  coverages: z.array(share).optional(),
  lab: z.tuple([z.number(), z.number(), z.number()]),
  paper: id.optional(),
  note,
});

/** A reading of a printed overlap: shown as measured, and what the inks learn from. */
const ProofReadingSchema = z.looseObject({
  paper: id,
  layers: z.array(id),
  /** What each of these layers covered on its film, where it was a tone: a step of a wedge, or any field of several. Left out: all lay solid. */
  coverages: z.array(share).optional(),
  reading: ReadingSchema,
  date: line(40).optional(),
  note,
});

const PotPartSchema = z.looseObject({ ink: id, grams: z.number().gt(0).max(1_000_000) });

/** A pot as mixed, and every drawdown of it since with what had been added before: rounds of saving it. */
const PotLogSchema = z.looseObject({
  layer: id,
  /** As first weighed in. */
  contents: z.array(PotPartSchema).min(1).max(50),
  rounds: z
    .array(
      z.looseObject({
        added: z.array(PotPartSchema).max(50).default([]),
        reading: ReadingSchema,
        /** How the drawdown looked, where no instrument read it. */
        looks: z
          .looseObject({
            how: z.enum(['too weak', 'too strong', 'too warm', 'too cool', 'too dull', 'too clean']),
            size: z.enum(['a little', 'clearly', 'very']),
          })
          .optional(),
        /** The same as a sentence: jobs of earlier Laydowns have it. */
        says: line(200).optional(),
        date: line(40).optional(),
        note,
      }),
    )
    .max(200)
    .default([]),
  /** Stirred in since the last drawdown; the next one takes it over. */
  adding: z.array(PotPartSchema).max(50).optional(),
  note,
});

/** What is done and stays as it is, with the state of the job that it was done from. */
const DoneSchema = z.looseObject({
  /** Stencils that are cut; their bridges stay where they are. */
  cut: z
    .array(
      z.looseObject({
        layer: id,
        state: z.string().max(40),
        bridges: z.array(BridgePinSchema).max(500).default([]),
        date: z.string().max(40).optional(),
      }),
    )
    .default([]),
  /** Pots that are mixed. */
  mixed: z.array(z.looseObject({ layer: id, state: z.string().max(40), date: z.string().max(40).optional() })).default([]),
  /** Runs that are pulled. */
  pulled: z.array(z.looseObject({ layer: id, state: z.string().max(40), date: z.string().max(40).optional() })).default([]),
});

const markShared = { x: z.number(), y: z.number(), weight: z.number().min(0).max(20) };
/** What counts more or less in a picture: 1 is usual, 3 three times, 0 not at all. Places and sizes in shares of the picture's width and height. */
const MarkSchema = z.discriminatedUnion('kind', [
  z.looseObject({ kind: z.literal('box'), ...markShared, width: z.number().gt(0), height: z.number().gt(0) }),
  z.looseObject({
    kind: z.literal('stroke'),
    weight: markShared.weight,
    radius: z.number().gt(0).max(1),
    points: z
      .array(z.tuple([z.number(), z.number()]))
      .min(1)
      .max(mostStrokePoints),
  }),
]);

/** A picture to be made into stencils, and how: what the separation is asked for. */
const PictureSchema = z.looseObject({
  file: attachment,
  name,
  /** In shares of the picture; left out: the largest part in the middle with the image's proportions. */
  crop: z.looseObject({ x: share, y: share, width: z.number().gt(0).max(1), height: z.number().gt(0).max(1) }).optional(),
  important: z.array(MarkSchema).max(mostMarks).default([]),
  layers: z.int().min(1).max(mostLayers).default(4),
  /** Inks to choose from; left out: all that were read. */
  pots: z.array(id).optional(),
  /** What is decided about the layers, first layer first. */
  wishes: z
    .array(z.looseObject({ ink: id.optional(), strength: z.number().gt(0).max(1).optional(), placeFixed: z.boolean().default(false) }))
    .max(mostLayers)
    .default([]),
  /** The job's own layers lie there already: go on from them. */
  over: z.boolean().default(false),
  /** How the picture is taken: near to it, bold in large regions, by light and shade in tones laid one on the other. */
  way: z.enum(['near', 'bold', 'light']).default('near'),
  /** A drawing (bare paper, flat colours, thin lines broadened) or a photograph; left out: as it looks. */
  takenAs: z.enum(['drawing', 'photograph']).optional(),
  /** The last layer is a key: darks and lines in the darkest pot. */
  key: z.boolean().default(false),
  /** Window and piece of each cut make two layers. */
  cutPairs: z.boolean().default(false),
  knife: z
    .looseObject({
      metres: z.number().gt(0).max(10000).optional(),
      minutes: z.number().gt(0).max(100000).optional(),
      pieces: z.number().gt(0).max(100000).optional(),
      leastWidthMm: z.number().gt(0).max(100).optional(),
      priceMm: z.number().gt(0).max(100000).optional(),
    })
    .prefault({}),
  material: id.optional(),
  /** Left out: the job's own register. */
  sigmaMm: z.number().min(0).max(10).optional(),
  /** What colours out of the inks' reach keep. */
  reach: z.enum(['nearest', 'lightness', 'chroma', 'contrast']).default('nearest'),
  /** How far lines, faces and what stands out count more than the rest of the picture: 0 all alike, 1 as the picture itself says. */
  veil: z.number().min(0).max(1).default(1),
  mostInPot: z.int().min(1).max(3).default(2),
  effort: z.number().min(0.05).max(20).default(1),
  seed: z.int().optional(),
});

const KnifeSchema = z.looseObject({
  /** How fast this studio cuts along a line; left out, like the two others: common practice. */
  metresPerMinute: z.number().gt(0).max(50).optional(),
  /** Lifting the knife and setting it anew. */
  secondsPerCorner: z.number().min(0).max(300).optional(),
  /** Lifting out what drops out, or laying a loose piece aside. */
  secondsPerPiece: z.number().min(0).max(300).optional(),
  /** Diameters of the punches at hand: circles of these sizes are punched. */
  punchesMm: z.array(sizeMm).max(50).optional(),
});

export const JobSchema = z.looseObject({
  schemaVersion: z.literal(currentSchemaVersion),
  /** Tells this print from every other, also from one of the same title; a job made before there was this has none. */
  print: id.optional(),
  title: name,
  maker: line(300).default(''),
  units: z.enum(['mm', 'in']).default('mm'),
  /** The language of the packet, unless whoever makes it asks for another; left out: English. */
  language: z.enum(['en', 'de']).optional(),
  image: z.looseObject({ widthMm: sizeMm, heightMm: sizeMm }),
  /** Paper or film left around the image on each stencil. */
  stencilMarginMm: z.number().min(0).max(500).default(40),
  materials: z.array(MaterialSchema).default([]),
  knife: KnifeSchema.optional(),
  /** Cameras of the studio whose lens is known. */
  cameras: z.array(CameraSchema).max(100).optional(),
  forms: z.array(FormSchema).default([]),
  cuts: z.array(CutSchema).default([]),
  layers: z.array(LayerSchema).default([]),
  inks: z.array(InkSchema).default([]),
  papers: z.array(PaperSchema).default([]),
  screen: ScreenSchema.optional(),
  press: PressSchema.prefault({}),
  register: RegisterSchema.prefault({}),
  edition: EditionSchema.prefault({}),
  day: DaySchema.prefault({}),
  wanted: z.array(TargetSchema).default([]),
  proofReadings: z.array(ProofReadingSchema).default([]),
  /** Running logs of pots that were corrected; one a layer. */
  potLogs: z.array(PotLogSchema).default([]),
  done: DoneSchema.optional(),
  picture: PictureSchema.optional(),
  seed: z.int().default(1),
  note,
});

export type Job = z.output<typeof JobSchema>;
export type JobForm = Job['forms'][number];
export type JobMade = NonNullable<JobForm['made']>;
export type JobReadAs = NonNullable<JobForm['read']>;
export type JobCut = Job['cuts'][number];
export type JobPart = JobCut['parts'][number];
export type JobLayer = Job['layers'][number];
export type JobTone = NonNullable<JobLayer['tone']>;
export type JobInk = Job['inks'][number];
export type JobPaper = Job['papers'][number];
export type JobReading = z.output<typeof ReadingSchema>;
export type JobScreen = NonNullable<Job['screen']>;
export type JobPotLog = Job['potLogs'][number];
export type JobPicture = NonNullable<Job['picture']>;
export type PictureMark = JobPicture['important'][number];
export { CameraSchema, type JobCamera } from './camera.ts';
export type JobMaterial = Job['materials'][number];

/** A Job with its attachments (drawings, photographs, readings), by their path inside the job folder. */
export interface JobBundle {
  readonly job: Job;
  readonly attachments: ReadonlyMap<string, Uint8Array>;
}
