import { bandsPatch } from '../../../../core/asks/index.ts';
import { fileStem } from '../../../../core/job/index.ts';
import { fail } from '../../../../core/problem.ts';
import { exposureFilm, filmFile, filmOf, wedgeFilm, type ToneRun } from '../../../../packet/index.ts';
import { say } from '../../../../words/one-language.ts';
import type { Work } from '../room.ts';

const kinds = { image: filmOf, wedge: wedgeFilm, strip: exposureFilm } as const;

/** The film of a run of tone as a file, at the printer's own resolution. */
export const filmAnswer: Work<'film'> = async ({ layerId, what = 'image', format, dpi, mirrored, language }, room) => {
  const plan = room.last?.plan;
  const layer = plan?.layers.find((l): l is ToneRun => l.id === layerId && l.tone !== null);
  if (!plan || !layer) fail('no-such-layer', `layers[#${layerId}]`, say('engine.stencilNotPlanned'), say('engine.waitAndTry'));
  const film = kinds[what](plan, layer, { dpi, mirrored, reader: { language, units: plan.job.units } });
  const path = `${fileStem(plan.job.title)}-${layer.run}-${fileStem(layer.name)}${what === 'image' ? '' : `-${what}`}.${format}`;
  return { answer: { path, bytes: filmFile(film, format) }, transfer: [] };
};

/** Drawn dot by dot: too long for the page itself. */
export const bandsAnswer: Work<'bands'> = async ({ paperId, screenPerMm }, room) => {
  const plan = room.last?.plan;
  const paper = plan?.papers.find((p) => p.id === paperId);
  return { answer: plan && paper ? bandsPatch(plan, paper, screenPerMm) : null, transfer: [] };
};
