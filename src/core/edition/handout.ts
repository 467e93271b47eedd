import { cautionsFor } from './cautions.ts';
import type { Caution } from './cautions.ts';

/** What the teaching hand-out needs of a job, in words ready to print. */
export interface HandoutInput {
  readonly title: string;
  readonly maker?: string;
  readonly imageSize: string;
  readonly sheetSize: string;
  readonly mesh: string;
  readonly registerText: string;
  readonly gapText: string;
  readonly dryMinutes: number;
  readonly setUpSheets: number;
  readonly layers: readonly {
    readonly id: string;
    readonly name: string;
    readonly side: 'window' | 'piece';
    readonly material: string;
    readonly ink: string | null;
    readonly recipe: string;
    readonly grams: string;
    readonly lookFor?: string;
  }[];
  readonly papers: readonly { readonly name: string; readonly sheets: number }[];
}

export interface HandoutStep {
  readonly number: number;
  readonly title: string;
  readonly text: string;
  /** Which of the job's own pictures stands beside it. */
  readonly picture:
    | { readonly kind: 'none' | 'overlaps' | 'fit' | 'stops' | 'final' }
    | { readonly kind: 'stencil' | 'after'; readonly layer: string };
  readonly cautions: readonly Caution[];
}

export interface Handout {
  readonly title: string;
  readonly intro: string;
  readonly bring: readonly string[];
  readonly steps: readonly HandoutStep[];
  /** The blank version: same order, nothing filled in. */
  readonly blank: {
    readonly title: string;
    readonly lines: readonly string[];
    readonly table: { readonly head: readonly string[]; readonly rows: number };
  };
}

/** A hand-out for a class, from this job's own pictures and numbers, and a blank one to fill in. */
export function teachingHandout(input: HandoutInput): Handout {
  const { layers, papers } = input;
  const materials = [...new Set(layers.map((layer) => layer.material))];
  const inks = [...new Set(layers.flatMap((layer) => layer.ink ?? []))];
  const steps: Omit<HandoutStep, 'number'>[] = [
    {
      title: 'Look first',
      text: 'Which colours lie over one another, and which pot holds none of them? Find the overlaps on the chart.',
      picture: { kind: 'overlaps' },
      cautions: [],
    },
    {
      title: 'Cut the stencils',
      text: `${layers.length} stencils from ${materials.join(', ')}. A window prints through its opening, a piece prints around itself; one cut gives both.`,
      picture: layers[0] ? { kind: 'stencil', layer: layers[0].id } : { kind: 'none' },
      cautions: cautionsFor('cut'),
    },
    {
      title: 'Mix the inks',
      text: `${inks.join(', ') || 'Inks still open'}. Weigh, stir, pull a drawdown on the same paper and judge it dry.`,
      picture: { kind: 'none' },
      cautions: cautionsFor('mix'),
    },
    {
      title: 'Set up screen and stops',
      text: `Mesh ${input.mesh}. ${input.gapText} ${input.registerText}`,
      picture: { kind: 'stops' },
      cautions: cautionsFor('press'),
    },
    ...layers.map(
      (layer, i): Omit<HandoutStep, 'number'> => ({
        title: `Run ${i + 1}: ${layer.name}`,
        text: `${layer.side === 'window' ? 'Window' : 'Piece'} in ${layer.material}; ${layer.ink ?? 'ink open: choose'}${layer.recipe ? `, ${layer.recipe}` : ''}; ${layer.grams}. ${input.setUpSheets} on newsprint first, then every sheet in the same order.${layer.lookFor ? ` Look for: ${layer.lookFor}` : ''}${i < layers.length - 1 ? ` Dry for ${Math.round(input.dryMinutes)} min.` : ''}`,
        picture: { kind: 'after', layer: layer.id },
        cautions: [],
      }),
    ),
    {
      title: 'Clean up',
      text: 'Ink back into labelled jars; wash the screen before anything else is done with it. Film stencils are washed and hung; paper ones are done.',
      picture: { kind: 'none' },
      cautions: cautionsFor('clean', 'store'),
    },
    {
      title: 'Choose and sign',
      text: 'Lay all sheets out, compare each with the one chosen as the measure (B.A.T.), number the good ones in pencil. The order of numbers means nothing.',
      picture: { kind: 'final' },
      cautions: cautionsFor('rack'),
    },
  ];
  return {
    title: input.title,
    intro: `A print in ${layers.length} runs, ${input.imageSize} on sheets of ${input.sheetSize}${input.maker ? `, after a job by ${input.maker}` : ''}.`,
    bring: [
      ...papers.map((paper) => `${paper.sheets} sheets: ${paper.name}`),
      `${input.setUpSheets * layers.length} sheets of newsprint, to set up with`,
      ...materials.map((material) => `stencil material: ${material}`),
      ...inks.map((ink) => `ink: ${ink}`),
      'transparent base, scales, jars with lids, labels',
      'knife with fresh blades, steel rule, cutting mat',
      'screen, squeegee, tape, stops, risers',
      'pencil, apron, gloves, rags',
    ],
    steps: steps.map((step, i) => ({ number: i + 1, ...step })),
    blank: {
      title: 'My print',
      lines: ['Title', 'Name', 'Size of the image', 'Paper and number of sheets', 'Mesh', 'Gap', 'Date'],
      table: {
        head: ['Run', 'Stencil: window or piece', 'Ink and base, parts', 'Grams', 'Sheets in', 'Sheets good', 'What I saw'],
        rows: Math.max(5, Math.min(8, layers.length)),
      },
    },
  };
}
