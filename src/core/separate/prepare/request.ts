import { BANDS } from '../../colour/index.ts';
import { mostPots } from '../kernels/search-engine.ts';
import { problem, ProblemError, type Problem } from '../../problem.ts';
import type { SeparateRequest } from '../types.ts';

const mostLayers = 8;
const mostSideMm = 3000;

/** Everything that makes a request impossible, told at once. @throws ProblemError */
export function checkRequest(request: SeparateRequest): void {
  const found: Problem[] = [];
  const bad = (code: string, place: string, message: string, advice: string): void => {
    found.push(problem('error', code, place, message, advice));
  };
  const printed = request.alreadyPrinted?.length ?? 0;
  const { layers, shelf, sizeMm, picture } = request;
  if (!Number.isInteger(layers) || layers < 1) bad('no-layers', 'layers', `${layers} layers make no print.`, 'Ask for 1 to 8.');
  else if (layers + printed > mostLayers) {
    bad(
      'too-many-layers',
      'layers',
      `${layers + printed} layers${printed ? ` (${printed} of them printed already)` : ''} are more than one sheet can carry here.`,
      `Ask for at most ${mostLayers}, those already printed counted.`,
    );
  }
  if (request.cutPairs && layers % 2 === 1)
    bad(
      'pairs-need-even',
      'layers',
      `${layers} layers do not make pairs: each cut gives a window and a piece.`,
      `Ask for ${layers + 1} or ${layers - 1} layers, or for single cuts.`,
    );
  if (!(sizeMm.width > 0 && sizeMm.height > 0) || Math.max(sizeMm.width, sizeMm.height) > mostSideMm) {
    bad(
      'size-out-of-range',
      'size',
      `An image of ${sizeMm.width} × ${sizeMm.height} mm can not be planned.`,
      `Give a width and a height between 1 and ${mostSideMm} mm.`,
    );
  }
  if (picture.width < 2 || picture.height < 2)
    bad(
      'picture-too-small',
      'picture',
      `The picture is ${picture.width} × ${picture.height} pixels: there is nothing in it to separate.`,
      'Give a picture of some hundred pixels across.',
    );
  if (request.paper.length !== BANDS)
    bad('paper-unread', 'paper', 'The paper has no spectrum.', 'Read the bare paper, or type its colour.');
  checkShelf(request, bad);
  checkWishes(request, bad);
  if ((request.registerSigmaMm ?? 0) < 0 || (request.registerSigmaMm ?? 0) > 10)
    bad(
      'register-out-of-range',
      'register',
      `A register error of ${request.registerSigmaMm} mm is no figure to plan with.`,
      'Give 0 to 10 mm; hand register is 0.2 to 1.5.',
    );
  const { metres, pieces, minutes, leastWidthMm } = request.knife ?? {};
  for (const [name, value] of [
    ['metres', metres],
    ['pieces', pieces],
    ['minutes', minutes],
    ['least width', leastWidthMm],
  ] as const) {
    if (value !== undefined && !(value > 0))
      bad('budget-out-of-range', `knife ${name}`, `A budget of ${value} leaves nothing to cut.`, 'Give a number above 0, or leave it out.');
  }
  if (request.importance && request.importance.weight.length !== request.importance.width * request.importance.height) {
    bad('importance-size', 'importance', 'The map of what is important does not have as many values as pixels.', 'Mark the regions again.');
  }
  if (shelf.length > 0) checkSame(request, bad);
  if (found.length > 0) throw new ProblemError(found);
}

type Tell = (code: string, place: string, message: string, advice: string) => void;

function checkShelf({ shelf }: SeparateRequest, bad: Tell): void {
  if (shelf.length === 0) bad('shelf-empty', 'inks', 'There is no ink on the shelf.', 'Read at least one drawdown first.');
  if (shelf.length > mostPots)
    bad('too-many-inks', 'inks', `${shelf.length} inks are too many to choose from.`, `Choose at most ${mostPots} of them.`);
  const ids = new Set<string>();
  for (const pot of shelf) {
    if (ids.has(pot.id)) bad('ink-twice', `inks ${pot.id}`, 'Two inks carry the same name.', 'Rename one of them.');
    ids.add(pot.id);
  }
}

function checkWishes({ wishes = [], shelf, layers, alreadyPrinted = [], printedWith = [] }: SeparateRequest, bad: Tell): void {
  const ids = new Set(shelf.map((pot) => pot.id));
  if (wishes.length > layers)
    bad(
      'wishes-exceed-layers',
      'layers',
      `${wishes.length} layers are described, but only ${layers} asked for.`,
      'Ask for more layers or drop some.',
    );
  wishes.forEach((wish, i) => {
    if (wish.ink !== undefined && !ids.has(wish.ink))
      bad('ink-unknown', `layer ${i + 1}`, `The ink "${wish.ink}" is not on the shelf.`, 'Choose one that is, or leave the ink free.');
    if (wish.strength !== undefined && !(wish.strength > 0 && wish.strength <= 1))
      bad('share-out-of-range', `layer ${i + 1}`, `The strength ${wish.strength} is no share of a pot.`, 'Give a number above 0, up to 1.');
    if (wish.strength !== undefined && wish.ink === undefined)
      bad(
        'strength-without-ink',
        `layer ${i + 1}`,
        'A strength is given, but not of which ink.',
        'Name the ink, or leave the strength free too.',
      );
  });
  const known = new Set([...ids, ...printedWith.map((pot) => pot.id)]);
  alreadyPrinted.forEach((layer, i) => {
    for (const { id } of layer.parts)
      if (!known.has(id))
        bad('ink-unknown', `printed layer ${i + 1}`, `The ink "${id}" it was printed with is not on the shelf.`, 'Add its reading.');
  });
}

/** Inks that absorb and scatter alike make one ink: then all overlaps are coats of the same. Allowed, but inks without any colour are not. */
function checkSame({ shelf }: SeparateRequest, bad: Tell): void {
  const strongest = Math.max(...shelf.map(({ ink }) => Math.max(...ink.k, ...ink.s)));
  if (strongest < 0.02)
    bad('inks-colourless', 'inks', 'None of the inks changes the paper: all are clear.', 'Read drawdowns of coloured inks.');
}

/** Told beside the result. */
export function warnings(request: SeparateRequest): Problem[] {
  const out: Problem[] = [...request.picture.problems];
  const { shelf } = request;
  if (shelf.length > 1 && shelf.every(({ ink }) => alike(ink.k, shelf[0].ink.k) && alike(ink.s, shelf[0].ink.s))) {
    out.push(
      problem(
        'warning',
        'inks-all-same',
        'inks',
        'All inks on the shelf are the same: the print will be in tones of one colour.',
        'Add inks of other colours if the picture needs them.',
      ),
    );
  }
  return out;
}

function alike(a: Float64Array, b: Float64Array): boolean {
  return a.every((v, i) => Math.abs(v - b[i]) < 0.01);
}
