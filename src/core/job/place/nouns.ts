import { name as asName, say, type Names, type Rooms, type Saying } from '../../../words/say.ts';
import type { Job, JobReading } from '../schema/schema.ts';

/** Part of a Job's document, as it was read and may yet be wrong. */
export type Raw = Readonly<Record<string, unknown>>;

/** A thing as it is said alone, and with “of”: `run 6 (Foam)`, `of run 6 (Foam)`. */
export interface Scope {
  readonly it: Saying;
  readonly of: Saying;
  /** What lies on it. */
  readonly on?: Saying;
}
type Where = Rooms['where'];
/** Keys of the room `where` whose message takes these values. */
type KeyTaking<V> = {
  [N in keyof Where & string]: Where[N] extends (values: infer W) => string ? (V extends W ? (W extends V ? N : never) : never) : never;
}[keyof Where & string];
type FieldKey = KeyTaking<Parameters<Where['name']>[0]>;
type ThingKey = KeyTaking<Parameters<Where['paper']>[0]>;
type InnerKey = KeyTaking<Parameters<Where['bridge']>[0]>;

/** What a field is called: a noun that says whose it is, or one that stands alone. */
export type Noun = FieldKey | Saying;

export type Known<T> = T extends unknown ? keyof { [K in keyof T as string extends K ? never : K]: 1 } : never;
type At<T, K> = T extends unknown ? (K extends Known<T> ? T[K & keyof T] : never) : never;
/** The nouns of all fields of a thing. The compiler finds a field of the schema that has none. */
type Fields<T> = { readonly [K in Known<T> & string]: Field<NonNullable<At<T, K>>> };
type Field<V> = [V] extends [JobReading]
  ? { readonly reading: Noun }
  : [V] extends [readonly (infer E)[]]
    ? [E] extends [Readonly<Record<string, unknown>>]
      ? { readonly noun: Noun; readonly each: Each; readonly fields: Fields<E> }
      : Noun
    : [V] extends [Readonly<Record<string, unknown>>]
      ? [Known<V>] extends [never]
        ? Noun
        : { readonly noun: Noun; readonly inside?: (around: Scope) => Scope; readonly fields: Fields<V> }
      : Noun;
type Each = (item: Raw, index: number, around: Scope, document: Raw) => Scope;

/** The same, as it is walked. */
export type Node =
  | Noun
  | { readonly reading: Noun }
  | {
      readonly noun: Noun;
      readonly each?: Each;
      readonly inside?: (around: Scope) => Scope;
      readonly fields: Readonly<Record<string, Node>>;
    };

export function nameOf(item: Raw): Names | undefined {
  const name = item['name'];
  return typeof name === 'string' && name !== '' ? asName(name) : undefined;
}

/** What a list of a document holds, were it ever so broken. */
export function thingsIn(list: unknown): readonly Raw[] {
  return Array.isArray(list) ? list.map((item: unknown) => (typeof item === 'object' && item !== null ? (item as Raw) : {})) : [];
}

const thing =
  (it: ThingKey, of: ThingKey, named: (item: Raw, document: Raw) => Names | undefined = nameOf): Each =>
  (item, index, _, document) => {
    const values = { n: index + 1, name: named(item, document) };
    return { it: say(`where.${it}`, values), of: say(`where.${of}`, values) };
  };
const inner =
  (it: InnerKey, of: InnerKey, named: (item: Raw, document: Raw) => Names | undefined = () => undefined): Each =>
  (item, index, around, document) => {
    const values = { n: index + 1, name: named(item, document), of: around.of };
    return { it: say(`where.${it}`, values), of: say(`where.${of}`, values) };
  };
/** The name of the thing that a field names by its id. */
const nameBy =
  (list: 'forms' | 'inks' | 'layers', field: string) =>
  (item: Raw, document: Raw): Names | undefined =>
    nameOf(thingsIn(document[list]).find((other) => other['id'] === item[field]) ?? {});

/** Layers that are printed go by their run, and those left out by their name alone. */
const layer: Each = (item, index, around, document) => {
  if (item['off'] === true) return thing('layer', 'ofLayer')(item, index, around, document);
  const before = thingsIn(document['layers']).slice(0, index);
  return thing('run', 'ofRun')(item, before.filter((l) => l['off'] !== true).length, around, document);
};
const ink: Each = (item, ...rest) =>
  item['from'] === 'mix'
    ? thing('mixture', 'ofMixture')(item, ...rest)
    : item['role'] === 'retarder'
      ? thing('retarder', 'ofRetarder')(item, ...rest)
      : item['role'] === 'transparent-base' || item['role'] === 'extender-base'
        ? thing('base', 'ofBase')(item, ...rest)
        : thing('ink', 'ofInk')(item, ...rest);

const weighed = {
  each: inner('weighedIn', 'ofWeighedIn', nameBy('inks', 'ink')),
  fields: { ink: 'inkOf', grams: 'grams' },
} as const;

/** A mark is not told apart: which it is, the message says. */
const doneThing: Each = () => ({ it: say('where.done'), of: say('where.done') });

const meshFields = {
  perCm: say('where.threadCount'),
  threadMicrons: say('where.thread'),
  openingMicrons: say('where.opening'),
  openPercent: say('where.openArea'),
  thicknessMicrons: say('where.meshThickness'),
  theoreticalCm3PerM2: say('where.inkVolume'),
} as const;

const markFields = { layer: say('where.doneLayer'), state: say('where.doneState'), date: say('where.doneDate') } as const;

export const inReading: { readonly [K in Known<JobReading>]: Saying } = {
  kind: say('where.itsKind'),
  values: say('where.itsSpectrum'),
  xyz: say('where.itsXyz'),
  lab: say('where.itsLab'),
  sigma: say('where.itsDoubt'),
  note: say('where.itsNote'),
};

/** Every field of the Job by its noun. */
export const fields: Fields<Job> = {
  schemaVersion: say('where.format'),
  print: say('where.print'),
  title: say('where.title'),
  maker: say('where.maker'),
  units: say('where.units'),
  language: say('where.language'),
  image: {
    noun: say('where.image'),
    inside: () => ({ it: say('where.image'), of: say('where.ofImage') }),
    fields: { widthMm: 'width', heightMm: 'height' },
  },
  stencilMarginMm: say('where.stencilMargin'),
  materials: {
    noun: say('where.materials'),
    each: thing('material', 'ofMaterial'),
    fields: {
      id: 'id',
      name: 'name',
      thicknessMm: 'thickness',
      leastBridgeMm: 'leastBridge',
      leastOpeningMm: 'leastOpening',
      prints: 'lasts',
      washable: 'washable',
      stock: {
        noun: 'stock',
        inside: ({ it, of }) => ({ it, of: say('where.ofStock', { of }) }),
        fields: { widthMm: 'width', heightMm: 'height', grainMatters: 'grain', marginMm: 'margin' },
      },
      kerfMm: 'kerf',
    },
  },
  knife: {
    noun: say('where.knifePace'),
    fields: {
      metresPerMinute: say('where.paceAlong'),
      secondsPerCorner: say('where.paceCorner'),
      secondsPerPiece: say('where.pacePiece'),
      punchesMm: say('where.punches'),
    },
  },
  cameras: {
    noun: say('where.cameras'),
    each: thing('camera', 'ofCamera'),
    fields: {
      name: 'name',
      focalMm: 'focalLength',
      aspect: 'aspect',
      lensMiddle: 'lensMiddle',
      bend: 'lensBend',
      bendFar: 'lensBendFar',
      boards: 'boardsSeen',
    },
  },
  forms: {
    noun: say('where.forms'),
    each: thing('form', 'ofForm'),
    fields: {
      id: 'id',
      name: 'name',
      drawing: 'drawing',
      read: { noun: 'readAs', fields: { what: 'readWhat', colours: 'readColours', white: 'readWhite', threshold: 'readThreshold' } },
      made: {
        noun: 'madeShape',
        fields: {
          kind: 'madeKind',
          widthMm: 'width',
          heightMm: 'height',
          acrossMm: 'width',
          bandMm: 'bandWidth',
          stripes: 'stripes',
          stripeMm: 'stripeWidth',
          gapMm: 'gapBetween',
          lengthMm: 'lengthOf',
          backMm: 'backOfComb',
          edges: 'edges',
          roughMm: 'roughness',
          seed: 'throw',
          swingMm: 'swing',
          columns: 'columns',
          rows: 'rows',
          cellMm: 'cell',
          text: 'lettering',
          capHeightMm: 'capHeight',
          weight: 'strokeWeight',
          bridgeMm: 'bridgeWidth',
          spaceMm: 'letterSpace',
        },
      },
      outline: 'outline',
      widthMm: 'width',
      heightMm: 'height',
      note: 'note',
    },
  },
  cuts: {
    noun: say('where.cuts'),
    each: thing('cut', 'ofCut'),
    fields: {
      id: 'id',
      name: 'name',
      material: 'materialOf',
      sheetMm: 'stencilSheet',
      parts: {
        noun: 'formsOn',
        each: inner('partOfCut', 'ofPartOfCut', nameBy('forms', 'form')),
        fields: {
          form: 'formIn',
          how: 'how',
          xMm: 'across',
          yMm: 'down',
          angleDeg: 'angle',
          scale: 'scale',
          mirror: 'mirror',
          repeat: {
            noun: 'repeat',
            fields: {
              kind: 'repeatKind',
              columns: 'columns',
              rows: 'rows',
              stepXMm: 'stepAcross',
              stepYMm: 'stepDown',
              count: 'copies',
              centreMm: 'centre',
              turnForms: 'turns',
              seed: 'throw',
              leastMm: 'leastDistance',
              turn: 'turns',
            },
          },
        },
      },
      note: 'note',
    },
  },
  layers: {
    noun: say('where.layers'),
    each: layer,
    fields: {
      id: 'id',
      name: 'name',
      cut: 'cutOf',
      side: 'side',
      ink: 'inkOf',
      strength: 'strength',
      base: 'baseOf',
      bases: {
        noun: 'basesOf',
        each: inner('partOfMix', 'ofPartOfMix', nameBy('inks', 'ink')),
        fields: { ink: 'inkOf', share: 'shareOf' },
      },
      tone: {
        noun: 'tone',
        fields: {
          picture: 'tonePicture',
          share: 'toneShare',
          reads: 'toneReads',
          by: 'toneBy',
          shape: 'toneShape',
          rulingPerCm: 'toneRuling',
          angleDeg: 'toneAngle',
          leastDotMicrons: 'toneLeastDot',
          exposeSeconds: 'toneExposure',
        },
      },
      spreadMm: 'spread',
      offContactMm: 'gapOf',
      mesh: { noun: 'meshOf', fields: meshFields },
      islands: 'islands',
      bridgesBy: 'bridgesBy',
      pinnedBridges: {
        noun: 'bridges',
        each: inner('bridge', 'ofBridge'),
        fields: { fromMm: 'start', toMm: 'end', viaMm: 'via', widthMm: 'width' },
      },
      noBridge: { noun: 'bridgelessSpots', each: inner('bridgeless', 'ofBridgeless'), fields: { atMm: 'position', radiusMm: 'radius' } },
      closings: { noun: 'closings', each: inner('closing', 'ofClosing'), fields: { atMm: 'position', withinMm: 'radius' } },
      drops: { noun: 'drops', each: inner('drop', 'ofDrop'), fields: { atMm: 'position', withinMm: 'radius' } },
      off: 'leftOut',
      note: 'note',
    },
  },
  inks: {
    noun: say('where.inks'),
    each: ink,
    fields: {
      id: 'id',
      name: 'name',
      from: 'madeFrom',
      densityGPerMl: 'density',
      drawdownMicrons: 'drawdownFilm',
      known: 'knownHow',
      guess: { noun: 'guessed', fields: { known: 'guessedHow', over: { reading: 'guessedReading' } } },
      leftGrams: 'leftInJar',
      role: 'role',
      ground: { reading: 'ground' },
      over: { reading: 'over' },
      white: { reading: 'white' },
      overWhite: { reading: 'overWhite' },
      black: { reading: 'black' },
      overBlack: { reading: 'overBlack' },
      steps: {
        noun: 'ladder',
        each: inner('strengthOfLadder', 'ofStrengthOfLadder'),
        fields: { share: 'shareOf', over: { reading: 'readingOf' } },
      },
      parts: {
        noun: 'parts',
        each: inner('partOfMix', 'ofPartOfMix', nameBy('inks', 'ink')),
        fields: { ink: 'inkOf', parts: 'shareOf' },
      },
      note: 'note',
    },
  },
  papers: {
    noun: say('where.papers'),
    each: (item, index, ...rest) => ({
      ...thing('paper', 'ofPaper')(item, index, ...rest),
      on: say('where.onPaper', { n: index + 1, name: nameOf(item) }),
    }),
    fields: {
      id: 'id',
      name: 'name',
      reading: { reading: 'readingOf' },
      widthMm: 'width',
      heightMm: 'height',
      count: 'sheets',
      wantedPrints: 'wantedOn',
      thicknessMm: 'thickness',
      grain: 'grain',
      edge: 'edge',
      absorbency: 'absorbency',
      cockles: 'cockling',
      parent: { noun: 'parentSheet', fields: { widthMm: 'parentWidth', heightMm: 'parentHeight' } },
      imageAtMm: 'imageAt',
      printed: {
        noun: 'printed',
        inside: ({ it, of, on }) => ({ it, of: on ?? of }),
        fields: { picture: 'printedPicture', atMm: 'printedAt', widthMm: 'printedWidth', note: 'printedNote' },
      },
      note: 'note',
    },
  },
  screen: {
    noun: say('where.screen'),
    fields: {
      insideWidthMm: say('where.frameWidth'),
      insideHeightMm: say('where.frameHeight'),
      mesh: {
        noun: say('where.mesh'),
        fields: meshFields,
      },
      hinge: say('where.hinge'),
      offContactMm: say('where.gap'),
      hingeLiftMm: say('where.hingeLift'),
      tensionNPerCm: say('where.tension'),
      squeegeeMm: say('where.squeegee'),
      transfer: say('where.transfer'),
      riserStepMm: say('where.riserBoard'),
      tapeWidthMm: say('where.tapeWidth'),
      note: say('where.screenNote'),
    },
  },
  press: { noun: say('where.pressFilms'), fields: { films: say('where.howFilmsLie') } },
  register: {
    noun: say('where.register'),
    fields: {
      method: say('where.method'),
      sigmaMm: say('where.sigma'),
      measured: {
        noun: say('where.measured'),
        fields: {
          xMm: say('where.measuredAcross'),
          yMm: say('where.measuredDown'),
          turnDeg: say('where.measuredTurn'),
          sheets: say('where.measuredSheets'),
        },
      },
      testSheets: {
        noun: say('where.testSheets'),
        fields: {
          imageMm: say('where.testImage'),
          readsMm: say('where.testScale'),
          readings: {
            noun: say('where.testReadings'),
            each: thing('testReading', 'ofTestReading'),
            fields: { sheet: 'sheetOf', place: 'position', across: 'across', down: 'down' },
          },
        },
      },
      humidityPercent: say('where.humidityRange'),
    },
  },
  edition: {
    noun: say('where.edition'),
    fields: {
      target: say('where.target'),
      certainty: say('where.certainty'),
      spoilagePerRun: say('where.spoilage'),
      setUpSheets: say('where.setUpSheets'),
      artistsProofShare: say('where.artistsProofs'),
      batProofs: say('where.batProofs'),
      printersProofs: say('where.printersProofs'),
      horsCommerce: say('where.horsCommerce'),
      proofsOn: say('where.proofsOn'),
      papersAre: say('where.papersAre'),
      year: say('where.year'),
      workshop: say('where.workshop'),
      record: {
        noun: say('where.record'),
        fields: {
          signature: say('where.signature'),
          printer: say('where.printer'),
          printedFrom: say('where.printedFrom'),
          printedTo: say('where.printedTo'),
          master: say('where.master'),
          otherEditions: say('where.otherEditions'),
          posthumous: say('where.posthumous'),
        },
      },
      setApart: say('where.setApart'),
    },
  },
  day: {
    noun: say('where.day'),
    fields: {
      startHour: say('where.startHour'),
      endHour: say('where.endHour'),
      pullsPerHour: say('where.pace'),
      setUpMinutes: say('where.setUpTime'),
      cleanMinutes: say('where.cleanTime'),
      dryMinutes: say('where.dryTime'),
      rackPlaces: say('where.rackPlaces'),
      screens: say('where.screens'),
      humidityPercent: say('where.humidity'),
      hands: say('where.hands'),
      pullsPerHourHelped: say('where.helpedPace'),
      mealHour: say('where.mealHour'),
      mealMinutes: say('where.mealMinutes'),
      mostRunsPerDay: say('where.mostRunsPerDay'),
      screenDryMinutes: say('where.screenDryMinutes'),
      mixing: say('where.mixing'),
    },
  },
  wanted: {
    noun: say('where.wanted'),
    each: thing('wantedColour', 'ofWantedColour'),
    fields: { layers: 'layersOf', coverages: 'coveragesOf', lab: 'labOf', paper: 'paperIn', note: 'note' },
  },
  proofReadings: {
    noun: say('where.proofReadings'),
    each: thing('proofReading', 'ofProofReading'),
    fields: {
      paper: 'paperIn',
      layers: 'layersOf',
      coverages: 'coveragesOf',
      reading: { reading: 'readingOf' },
      date: 'date',
      note: 'note',
    },
  },
  done: {
    noun: say('where.done'),
    fields: {
      cut: {
        noun: say('where.doneCut'),
        each: doneThing,
        fields: {
          ...markFields,
          bridges: {
            noun: say('where.doneBridges'),
            each: doneThing,
            fields: {
              fromMm: say('where.doneBridgeStart'),
              toMm: say('where.doneBridgeEnd'),
              viaMm: say('where.doneBridgeVia'),
              widthMm: say('where.doneBridgeWidth'),
            },
          },
        },
      },
      mixed: { noun: say('where.doneMixed'), each: doneThing, fields: markFields },
      pulled: { noun: say('where.donePulled'), each: doneThing, fields: markFields },
    },
  },
  potLogs: {
    noun: say('where.potLogs'),
    each: thing('potLog', 'ofPotLog', nameBy('layers', 'layer')),
    fields: {
      layer: 'logLayer',
      contents: { noun: 'contents', ...weighed },
      rounds: {
        noun: 'rounds',
        each: inner('round', 'ofRound'),
        fields: {
          added: { noun: 'added', ...weighed },
          reading: { reading: 'readingOf' },
          looks: { noun: 'says', fields: { how: 'looksHow', size: 'looksSize' } },
          says: 'says',
          date: 'date',
          note: 'note',
        },
      },
      adding: { noun: 'adding', ...weighed },
      note: 'note',
    },
  },
  picture: {
    noun: say('where.picture'),
    inside: () => ({ it: say('where.picture'), of: say('where.ofPicture') }),
    fields: {
      file: say('where.pictureFile'),
      name: say('where.pictureName'),
      crop: {
        noun: say('where.crop'),
        inside: () => ({ it: say('where.crop'), of: say('where.ofCrop') }),
        fields: { x: 'across', y: 'down', width: 'width', height: 'height' },
      },
      important: {
        noun: say('where.marks'),
        each: thing('mark', 'ofMark'),
        fields: {
          kind: 'kind',
          x: 'across',
          y: 'down',
          weight: 'weight',
          width: 'width',
          height: 'height',
          radius: 'radius',
          points: 'stroke',
        },
      },
      layers: say('where.pictureLayers'),
      pots: say('where.pots'),
      wishes: {
        noun: say('where.wishes'),
        each: thing('pictureLayer', 'ofPictureLayer'),
        fields: { ink: 'inkOf', strength: 'strength', placeFixed: 'placeFixed' },
      },
      over: say('where.overLayers'),
      way: say('where.way'),
      takenAs: say('where.takenAs'),
      key: say('where.keyLayer'),
      cutPairs: say('where.cutPairs'),
      knife: {
        noun: say('where.knifeBudget'),
        fields: {
          metres: say('where.knifeMetres'),
          minutes: say('where.knifeMinutes'),
          pieces: say('where.knifePieces'),
          leastWidthMm: say('where.knifeWidth'),
          priceMm: say('where.knifePrice'),
        },
      },
      material: say('where.pictureMaterial'),
      sigmaMm: say('where.pictureSigma'),
      reach: say('where.reach'),
      veil: say('where.veil'),
      mostInPot: say('where.mostInPot'),
      effort: say('where.effort'),
      seed: say('where.pictureChance'),
    },
  },
  seed: say('where.chance'),
  note: say('where.jobNote'),
};
