import { ridgeMatters } from '../../../press/index.ts';
import { figure, list, name as asName, say, share, type Saying } from '../../../../words/say.ts';
import type { Job } from '../../../job/index.ts';
import { problem, type Problem } from '../../../problem.ts';
import { meshName } from './press.ts';
import type { PlannedLayer } from '../../planned.ts';
import type { Plan } from '../../types.ts';

/** What the printer must know of a run before the first pull: a piece without a border, where the next stencil comes, fine shapes. */
export function pressNotes(
  { cuts, edition, press, layers }: Pick<Plan, 'cuts' | 'edition' | 'press' | 'layers'>,
  layer: PlannedLayer,
): Saying[] {
  const use = cuts.flatMap((c) => c.uses).find((u) => u.layerId === layer.id);
  const meshOf = (run: number): string | undefined => press.runs.find((r) => r.layerId === layers[run - 1]?.id)?.name;
  const mesh = meshOf(layer.run);
  return [
    ...(mesh !== undefined && mesh !== (layer.run === 1 ? meshName(press.deposit.mesh) : meshOf(layer.run - 1))
      ? [say('press.changeScreen', { mesh: asName(mesh) })]
      : []),
    ...(use?.border === 'tape-on-edge' ? [say('press.tapeOnEdge', { n: Math.max(1, layer.stencil.loosePieces.length) })] : []),
    ...changeNotes(layer, edition),
    ...(layer.ridge.share > ridgeMatters && layer.ridge.timesTheFilm > 2
      ? [
          say('press.fineShapes', {
            share: share(layer.ridge.share, 0),
            times: figure(layer.ridge.meanTimes, 1, false),
            counted: figure(layer.ridge.colourTimes, 2, false),
          }),
        ]
      : []),
  ];
}

/** From so many changes on they are told in one line: they would fill the card. */
const oftenChanged = 5;
const mostSaid = 40;

function changeNotes({ changes }: PlannedLayer, edition: Plan['edition']): Saying[] {
  const of = changes.length + 1;
  const named = changes.map((change) => ({ ...change, sheet: edition.sheetNames[change.afterSheets - 1]?.id }));
  const [before, after] = [named.filter((c) => c.sheet === undefined), named.filter((c) => c.sheet !== undefined)];
  const first = before.map(({ checkSheets: n, stencil }) => say('press.changeBeforeFirst', { n, stencil, of }));
  if (after.length < oftenChanged)
    return [
      ...first,
      ...after.map(({ sheet, checkSheets: n, stencil }) => say('press.changeAfter', { sheet: asName(sheet!), n, stencil, of })),
    ];
  // Where each comes stands among the boxes too, as a bar.
  const said = after.slice(0, mostSaid).map(({ sheet }) => asName(sheet!));
  const sheets = after.length > mostSaid ? list([...said, asName('…')], 'comma') : list(said);
  return [...first, say('press.changeOften', { sheets, n: Math.max(...after.map((c) => c.checkSheets)), of })];
}

/** A flat this large wets the sheet enough to move it. common practice */
const wetsTheSheet = 0.25;

/** Papers that go wavy, and the runs that make them so. */
export function cocklingNotes(job: Pick<Job, 'papers'>, layers: readonly Pick<PlannedLayer, 'name' | 'run' | 'coverage'>[]): Problem[] {
  const wet = layers.filter((l) => l.coverage > wetsTheSheet);
  if (wet.length === 0) return [];
  const runs = list(wet.map((l) => say('press.runNamed', { run: l.run, layer: asName(l.name), share: share(l.coverage, 0) })));
  return job.papers
    .filter((p) => p.cockles)
    .map((p) =>
      problem('note', 'paper-cockles', `papers[#${p.id}]`, say('press.cockles', { paper: asName(p.name), runs }), say('press.pressFlat')),
    );
}
