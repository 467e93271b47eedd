import { askLines } from '../../../core/asks/index.ts';
import { lineWays } from '../../../core/halftone/index.ts';
import { checkJob, writeJob } from '../../../core/job/index.ts';
import { fail } from '../../../core/problem.ts';
import { figure, length, name as asName, say, share } from '../../../words/index.ts';
import type { Command } from '../../command.ts';
import { planOf, printProblems } from '../../disk/load.ts';
import { writeWhole } from '../../disk/write-folder.ts';
import { placeOf } from '../../options.ts';
import { sayHere } from '../../reader.ts';
import { option } from '../../say/help.ts';
import { sayStencil } from '../../say/say-stencil.ts';
import { idsOf, numberOf, textOf } from '../../say/words.ts';
import { oneOf, pictureAsk, pictureHelp, pictureOptions } from './picture-ask.ts';

export const lines: Command = {
  name: 'lines',
  usage: say('help.linesUsage'),
  summary: say('help.linesSummary'),
  help: [
    ...pictureHelp,
    option('--way', say('help.linesWay'), 'way'),
    option('--pitch MM', say('help.linesPitch')),
    option('--angle DEG', say('help.linesAngle')),
    option('--centre X,Y', say('help.linesCentre')),
    option('--ink', say('help.linesInk'), 'name'),
    option('--on', say('help.separateOn'), 'paper'),
    option('--material', say('help.separateMaterial'), 'material'),
    option('--after', say('help.linesAfter')),
  ],
  options: {
    ...pictureOptions,
    way: { type: 'string' },
    pitch: { type: 'string' },
    angle: { type: 'string' },
    centre: { type: 'string' },
    ink: { type: 'string' },
    on: { type: 'string' },
    material: { type: 'string' },
    after: { type: 'boolean' },
  },
  async run(call) {
    const given = call.options;
    const { bundle, picture, crop, job: sized, out, wish } = await pictureAsk(call);
    const ink = textOf(given['ink']);
    if (ink !== undefined && !bundle.job.inks.some((k) => k.id === ink))
      fail(
        'no-such-ink',
        placeOf('--ink'),
        say('halftone.noSuchInk', { ink: asName(ink) }),
        say('halftone.nameInks', { ids: idsOf(bundle.job.inks) }),
      );
    const after = given['after'] === true;
    const answer = askLines(after ? bundle.job : sized, picture, {
      way: oneOf(given, 'way', lineWays) ?? 'parallel',
      pitchMm: given['pitch'] === undefined ? undefined : numberOf(given['pitch'], '--pitch', 5, 0.5, 50),
      angleDeg: given['angle'] === undefined ? undefined : numberOf(given['angle'], '--angle', 0, -360, 360),
      centreMm: centreOf(textOf(given['centre'])),
      ink,
      paperId: textOf(given['on']),
      materialId: textOf(given['material']),
      crop,
      after,
    });
    const used = JSON.stringify(answer.job);
    const made = { job: answer.job, attachments: new Map([...bundle.attachments].filter(([name]) => used.includes(JSON.stringify(name)))) };
    const plan = await planOf(made);
    writeWhole(
      out,
      [...writeJob(made)].map(([name, bytes]) => ({ path: name, bytes })),
      wish,
    );
    const layer = plan.layers.find((l) => l.id === answer.layerId);
    console.log(
      sayHere('halftone.linesMade', {
        n: answer.cut.region.rings.length,
        pitch: length(answer.pitchMm, 1),
        lightest: share(answer.cut.lightest, 0),
        darkest: share(answer.cut.darkest, 0),
      }),
    );
    console.log(sayHere('halftone.linesReach', { bare: figure(answer.bareL, 0, false), darkest: figure(answer.darkestL, 0, false) }));
    if (layer) for (const line of sayStencil(plan, layer)) console.log(line);
    console.log(sayHere('halftone.linesWritten', { folder: asName(out), layer: asName(answer.layerId) }));
    printProblems([...plan.problems.filter((p) => p.severity === 'error'), ...checkJob(made).filter((p) => p.severity === 'error')]);
    return 0;
  },
};

function centreOf(text: string | undefined): readonly [number, number] | undefined {
  if (text === undefined) return undefined;
  const [x, y, ...more] = text.split(/[,;]/).map(Number);
  if (more.length > 0 || !Number.isFinite(x) || !Number.isFinite(y))
    fail('bad-number', placeOf('--centre'), say('cli.cannotUse', { text: asName(text) }), say('help.linesCentre'));
  return [x, y];
}
