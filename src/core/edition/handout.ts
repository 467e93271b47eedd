import { lengths, list, name as asName, say, sentences, time as minutesOf, type Saying } from '../../words/say.ts';
import { cautionsFor } from './cautions.ts';
import type { Caution } from './cautions.ts';

/** What the teaching hand-out needs of a job. */
export interface HandoutInput {
  readonly title: string;
  readonly maker?: string;
  readonly imageMm: readonly [number, number];
  readonly sheetMm: readonly [number, number];
  readonly mesh: Saying;
  readonly register: Saying;
  readonly gap: Saying;
  readonly dryMinutes: number;
  readonly setUpSheets: number;
  readonly layers: readonly {
    readonly id: string;
    readonly name: string;
    /** `window in film`. */
    readonly stencil: Saying;
    readonly material: { readonly id: string; readonly name: Saying };
    /** null while it is open. */
    readonly ink: { readonly id: string; readonly name: Saying } | null;
    readonly recipe: Saying | null;
    readonly amount: Saying;
    readonly lookFor?: string;
  }[];
  readonly papers: readonly { readonly name: string; readonly sheets: number }[];
}

export interface HandoutStep {
  readonly number: number;
  readonly title: Saying;
  readonly text: Saying;
  /** Which of the job's own pictures stands beside it. */
  readonly picture:
    | { readonly kind: 'none' | 'overlaps' | 'fit' | 'stops' | 'final' }
    | { readonly kind: 'stencil' | 'after'; readonly layer: string };
  readonly cautions: readonly Caution[];
}

export interface Handout {
  /** The job's. */
  readonly title: string;
  readonly intro: Saying;
  readonly bring: readonly Saying[];
  readonly steps: readonly HandoutStep[];
  /** The blank version: same order, nothing filled in. */
  readonly blank: {
    readonly title: Saying;
    readonly lines: readonly Saying[];
    readonly table: { readonly head: readonly Saying[]; readonly rows: number };
  };
}

/** A hand-out for a class, from this job's own pictures and numbers, and a blank one to fill in. */
export function teachingHandout(input: HandoutInput): Handout {
  const { layers, papers, setUpSheets } = input;
  const materials = namesOf(layers.map((layer) => layer.material));
  const inks = namesOf(layers.flatMap((layer) => layer.ink ?? []));
  const steps: Omit<HandoutStep, 'number'>[] = [
    { title: say('record.lookFirst'), text: say('record.lookFirstText'), picture: { kind: 'overlaps' }, cautions: [] },
    {
      title: say('record.cutStencils'),
      text: say('record.cutStencilsText', { n: layers.length, materials: list(materials, 'comma') }),
      picture: layers[0] ? { kind: 'stencil', layer: layers[0].id } : { kind: 'none' },
      cautions: cautionsFor('cut'),
    },
    {
      title: say('record.mixInks'),
      text: say('record.mixInksText', { inks: inks.length > 0 ? list(inks, 'comma') : undefined }),
      picture: { kind: 'none' },
      cautions: cautionsFor('mix'),
    },
    {
      title: say('record.setUpScreen'),
      text: sentences(say('record.meshIs', { mesh: input.mesh }), input.gap, input.register),
      picture: { kind: 'stops' },
      cautions: cautionsFor('press'),
    },
    ...layers.map(
      (layer, i): Omit<HandoutStep, 'number'> => ({
        title: say('record.runTitle', { run: i + 1, layer: asName(layer.name) }),
        text: sentences(
          say('record.runPot', {
            stencil: layer.stencil,
            ink: layer.ink?.name,
            recipe: layer.recipe ?? undefined,
            amount: layer.amount,
          }),
          setUpSheets > 0 ? say('record.newsprintFirst', { n: setUpSheets }) : say('record.sameOrder'),
          layer.lookFor ? say('record.lookFor', { note: asName(layer.lookFor) }) : null,
          i < layers.length - 1 && say('record.dryFor', { time: minutesOf(input.dryMinutes) }),
        ),
        picture: { kind: 'after', layer: layer.id },
        cautions: [],
      }),
    ),
    {
      title: say('record.cleanUp'),
      text: say('record.cleanUpText'),
      picture: { kind: 'none' },
      cautions: cautionsFor('clean', 'store'),
    },
    {
      title: say('record.chooseAndSign'),
      text: say('record.chooseAndSignText'),
      picture: { kind: 'final' },
      cautions: cautionsFor('rack'),
    },
  ];
  return {
    title: input.title,
    intro: say('record.intro', {
      runs: layers.length,
      image: lengths(input.imageMm),
      sheet: lengths(input.sheetMm),
      maker: input.maker ? asName(input.maker) : undefined,
    }),
    bring: [
      ...papers.map((paper) => say('record.bringPaper', { n: paper.sheets, paper: asName(paper.name) })),
      ...(setUpSheets > 0 ? [say('record.bringNewsprint', { n: setUpSheets * layers.length })] : []),
      ...materials.map((material) => say('record.bringMaterial', { material })),
      ...inks.map((ink) => say('record.bringInk', { ink })),
      say('record.bringBase'),
      say('record.bringKnife'),
      say('record.bringScreen'),
      say('record.bringPencil'),
    ],
    steps: steps.map((step, i) => ({ number: i + 1, ...step })),
    blank: {
      title: say('record.myPrint'),
      lines: [
        say('record.title'),
        say('record.yourName'),
        say('record.imageSize'),
        say('record.paperAndSheets'),
        say('record.meshHead'),
        say('record.gapHead'),
        say('record.dateHead'),
      ],
      table: {
        head: [
          say('record.runHead'),
          say('record.stencilHead'),
          say('record.potHead'),
          say('record.gramsHead'),
          say('record.sheetsIn'),
          say('record.sheetsGood'),
          say('record.whatISaw'),
        ],
        rows: Math.max(5, Math.min(8, layers.length)),
      },
    },
  };
}

/** The names of things, each thing once. */
function namesOf(things: readonly { readonly id: string; readonly name: Saying }[]): readonly Saying[] {
  return [...new Map(things.map((one) => [one.id, one.name])).values()];
}
