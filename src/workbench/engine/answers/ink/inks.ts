import {
  defaultSurface,
  drawdownSheet,
  emptyShelf,
  inkCurves,
  inkOfLot,
  lotInUse,
  mergeShelves,
  readPhoto,
  readReadings,
  readSheetPhoto,
  readShelf,
  readTyped,
  spectrumFromReading,
  writeShelf,
  type InkShelf,
  type Reading,
} from '../../../../core/ink/index.ts';
import {
  askAgain,
  askBatch,
  askComplaint,
  askInks,
  askLeftovers,
  askOrders,
  askPot,
  askReach,
  askRecipe,
  askSpread,
  askWanted,
  colourInPicture,
  inkFromSheet,
  inkFromShelf,
  jobReading,
  labOfReading,
  partsOfLayer,
  inkBench,
  paperOf,
  shelfWithJob,
  srgbOfLab,
  wantedOfPot,
} from '../../../../core/asks/index.ts';
import type { Plan } from '../../../../core/plan/index.ts';
import { fail, ProblemError } from '../../../../core/problem.ts';
import { asWritten, name as asName, say } from '../../../../words/one-language.ts';
import { makeDrawdownSheets } from '../../../../packet/index.ts';
import type { InkQuestions } from '../../ink-questions.ts';
import { photographOf } from './photo.ts';
import type { Room, Work } from '../room.ts';

function planOf(room: Room): Plan {
  return room.last?.plan ?? fail('no-plan', say('where.workbench'), say('engine.notPlanned'), say('engine.waitAndTry'));
}

const shown = (name: string, reading: Reading): { name: string; reading: Reading; lab: ReturnType<typeof labOfReading>; srgb: string } => {
  const lab = labOfReading(reading, asWritten(name));
  return { name, reading, lab, srgb: srgbOfLab(lab) };
};

/** Every question of the ink station and who answers it. */
export const inkAnswers: { readonly [Q in keyof InkQuestions]: Work<Q> } = {
  inks: async ({ paperId }, room) => ({ answer: askInks(planOf(room).job, paperId), transfer: [] }),
  wanted: async ({ paperId }, room) => ({ answer: askWanted(planOf(room), paperId), transfer: [] }),
  readings: async (ask) => {
    if ('text' in ask)
      return { answer: { patches: [shown(ask.place, readTyped(ask.text, asWritten(ask.place)))], problems: [] }, transfer: [] };
    const read = readReadings(ask.bytes, ask.name);
    return { answer: { patches: read.patches.slice(0, 500).map((p) => shown(p.name, p.reading)), problems: read.problems }, transfer: [] };
  },
  sheetPhoto: async ({ bytes, name, ink, paperLab, greyLab }) => {
    const read = readSheetPhoto(drawdownSheet(ink.name), await photographOf(bytes, name), {
      place: say('where.file', { file: asName(name) }),
      ...(paperLab ? { paperLab } : {}),
      ...(greyLab ? { greyLab } : {}),
    });
    return {
      answer: {
        ink: inkFromSheet(read, ink, name),
        problems: [...read.problems, ...read.boxes.flatMap((b) => b.problems)],
      },
      transfer: [],
    };
  },
  markedPhoto: async ({ bytes, name, ...marks }) => {
    const read = readPhoto({
      ...marks,
      patches: marks.patches.map((p) => ({ ...p, name: asWritten(p.name) })),
      photo: await photographOf(bytes, name),
      place: say('where.file', { file: asName(name) }),
    });
    return {
      answer: {
        paper: { kind: 'photo', lab: read.paper, sigma: read.patches[0]?.reading.sigma ?? 7 },
        patches: read.patches.map((p, i) => shown(marks.patches[i].name, p.reading)),
        problems: [...read.problems, ...read.patches.flatMap((p) => p.problems)],
      },
      transfer: [],
    };
  },
  pictureColour: async ({ bytes, name, x, y }) => ({ answer: colourInPicture(await photographOf(bytes, name), x, y), transfer: [] }),
  recipe: async (ask, room) => {
    const found = askRecipe(planOf(room).job, ask, planOf(room));
    return {
      answer: {
        recipes: found.byPots.map((r) => ({ ...r, srgb: srgbOfLab(r.lab) })),
        best: Math.max(0, found.byPots.indexOf(found.best)),
        why: found.why,
        wantedSrgb: srgbOfLab(ask.wanted),
        problems: found.problems,
      },
      transfer: [],
    };
  },
  leftovers: async (ask, room) => {
    const found = askLeftovers(planOf(room).job, ask, planOf(room));
    const shownPot = found.best ?? found.nearest;
    return { answer: { ...found, srgb: srgbOfLab(shownPot ? shownPot.lab : ask.wanted), wantedSrgb: srgbOfLab(ask.wanted) }, transfer: [] };
  },
  spread: async (ask, room) => ({ answer: askSpread(planOf(room), ask), transfer: [] }),
  orders: async (ask, room, task) => ({ answer: await askOrders(planOf(room), ask, task), transfer: [] }),
  batch: async (ask, room) => {
    const batch = askBatch(planOf(room), ask);
    return { answer: { ...batch, srgb: srgbOfLab(batch.lab) }, transfer: [] };
  },
  reach: async (ask, room) => ({
    answer: askReach(planOf(room), ask).map((r) => ({ ...r, overlaps: r.overlaps.map((o) => ({ ...o, srgb: srgbOfLab(o.lab) })) })),
    transfer: [],
  }),
  pot: async (ask, room) => {
    const { job } = planOf(room);
    const wanted = ask.wanted ?? wantedOfPot(job, ask.layer, ask.paperId).lab;
    const answer = askPot(job, ask);
    return {
      answer: {
        ...answer,
        wanted,
        wantedSrgb: srgbOfLab(wanted),
        nowSrgb: srgbOfLab(answer.now.lab),
        afterSrgb: srgbOfLab(answer.after.lab),
      },
      transfer: [],
    };
  },
  complaint: async ({ layer, complaint, paperId }, room) => {
    const { job } = planOf(room);
    return {
      answer: { wantedSrgb: srgbOfLab(wantedOfPot(job, layer, paperId).lab), pictures: askComplaint(job, layer, complaint, paperId) },
      transfer: [],
    };
  },
  again: async ({ layer, paperId, lots }, room) => {
    const { job } = planOf(room);
    const { paper } = paperOf(inkBench(job), paperId);
    const lotInks = lots.flatMap(({ id, over }) => {
      const old = job.inks.find((k) => k.id === id);
      if (!old) return [];
      return [
        {
          id,
          name: old.name,
          role: old.role,
          densityGPerMl: old.densityGPerMl,
          ...(old.drawdownMicrons === undefined ? {} : { drawdownMicrons: old.drawdownMicrons }),
          from: 'one-ground' as const,
          ground: paper.reading,
          over: jobReading(over),
        },
      ];
    });
    const matched = askAgain(
      job,
      { layer, paperId: paper.id, lots: lotInks.map((ink) => ({ id: ink.id, ink })) },
      partsOfLayer(job, layer),
    );
    return {
      answer: {
        ...matched,
        lotInks,
        wantedSrgb: srgbOfLab(matched.wanted),
        unchangedSrgb: srgbOfLab(matched.unchanged.lab),
        correctedSrgb: srgbOfLab(matched.corrected.lab),
      },
      transfer: [],
    };
  },
  partsOf: async ({ layer }, room) => ({ answer: partsOfLayer(planOf(room).job, layer), transfer: [] }),
  drawdowns: async ({ titles, language = 'en' }, room) => {
    const bytes = await makeDrawdownSheets(titles, await room.fonts, undefined, { language, units: room.last?.job.units ?? 'mm' });
    return { answer: bytes, transfer: [bytes.buffer] };
  },
  shelf: async ({ mine, file, from, date }, room) => {
    const read = file ? readShelf(file.text, file.name) : null;
    const put = read
      ? mine
        ? mergeShelves(mine, read)
        : { shelf: read, problems: [] }
      : from
        ? shelfWithJob(mine, from, date)
        : { shelf: mine ?? emptyShelf(), problems: [] };
    return { answer: { ...put, swatches: swatchesOf(put.shelf, room), text: writeShelf(put.shelf) }, transfer: [] };
  },
  shelfInk: async ({ ink, lot }) => ({ answer: inkFromShelf(ink, lot), transfer: [] }),
};

/** Each ink of a shelf alone on the job's first paper, or on a usual white one. */
function swatchesOf(shelf: InkShelf, room: Room): Record<string, string> {
  const white = room.last?.job.papers[0]?.reading ?? { kind: 'lab' as const, lab: [95, 0, 0] as [number, number, number] };
  const paper = spectrumFromReading(white, 'papers[0].reading');
  const surface = defaultSurface([], false);
  return Object.fromEntries(
    shelf.inks.flatMap((ink) => {
      try {
        return [[ink.id, inkCurves(inkOfLot(lotInUse(ink), surface, ink.name).ink, paper, surface, [1]).strengths[0].srgb]];
      } catch (error) {
        if (!(error instanceof ProblemError)) throw error;
        return [];
      }
    }),
  );
}
