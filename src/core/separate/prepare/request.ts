import { BANDS } from '../../colour/index.ts';
import { mostPots } from '../kernels/search-engine.ts';
import { problem, ProblemError, type Problem } from '../../problem.ts';
import { figure, length, lengths, name as asName, say, type Saying } from '../../../words/say.ts';
import type { SeparateRequest } from '../types.ts';

const mostLayers = 8;
const mostSideMm = 3000;

/** Everything that makes a request impossible, told at once. @throws ProblemError */
export function checkRequest(request: SeparateRequest): void {
  const found: Problem[] = [];
  const bad: Tell = (code, place, message, advice) => {
    found.push(problem('error', code, place, message, advice));
  };
  const printed = request.alreadyPrinted?.length ?? 0;
  const { layers, shelf, sizeMm, picture } = request;
  if (!Number.isInteger(layers) || layers < 1) {
    bad(
      'no-layers',
      'picture.layers',
      say('separate.noLayers', { layers: figure(layers, 2, false) }),
      say('separate.askForLayers', { most: mostLayers }),
    );
  } else if (layers + printed > mostLayers) {
    bad(
      'too-many-layers',
      'picture.layers',
      printed > 0 ? say('separate.tooManyLayersOver', { layers: layers + printed, printed }) : say('separate.tooManyLayers', { layers }),
      printed > 0 ? say('separate.askForFewerOver', { most: mostLayers }) : say('separate.askForLayers', { most: mostLayers }),
    );
  }
  if (request.cutPairs && layers % 2 === 1)
    bad(
      'pairs-need-even',
      'picture.layers',
      say('separate.oddPairs', { layers }),
      layers > 1 ? say('separate.askForEven', { more: layers + 1, fewer: layers - 1 }) : say('separate.askForTwo'),
    );
  checkWay(request, bad);
  if (!(sizeMm.width > 0 && sizeMm.height > 0) || Math.max(sizeMm.width, sizeMm.height) > mostSideMm) {
    bad(
      'size-out-of-range',
      'image',
      say('separate.sizeImpossible', { size: lengths([sizeMm.width, sizeMm.height]) }),
      say('separate.giveSize', { between: lengths([1, mostSideMm], 'to') }),
    );
  }
  if (picture.width < 2 || picture.height < 2)
    bad(
      'picture-too-small',
      'picture.file',
      say('separate.pictureTooSmall', { width: picture.width, height: picture.height }),
      say('separate.giveLargerPicture'),
    );
  if (request.paper.length !== BANDS) bad('paper-unread', 'papers', say('separate.paperUnread'), say('separate.readPaper'));
  checkShelf(request, bad);
  checkWishes(request, bad);
  const sigmaMm = request.registerSigmaMm ?? 0;
  if (sigmaMm < 0 || sigmaMm > 10)
    bad(
      'register-out-of-range',
      'picture.sigmaMm',
      say('separate.registerImpossible', { off: length(sigmaMm) }),
      say('separate.giveRegister', { between: lengths([0, 10], 'to'), usual: lengths([0.2, 1.5], 'to') }),
    );
  const { metres, pieces, minutes, leastWidthMm } = request.knife ?? {};
  for (const [field, value, budget] of [
    ['metres', metres, say('separate.metres')],
    ['pieces', pieces, say('separate.pieces')],
    ['minutes', minutes, say('separate.minutes')],
    ['leastWidthMm', leastWidthMm, say('separate.leastWidth')],
  ] as const) {
    if (value !== undefined && !(value > 0))
      bad(
        'budget-out-of-range',
        `picture.knife.${field}`,
        say('separate.budgetImpossible', { budget, value: figure(value, 2, false) }),
        say('separate.aboveNought'),
      );
  }
  if (request.importance && request.importance.weight.length !== request.importance.width * request.importance.height)
    bad('importance-size', 'picture.important', say('separate.importanceSize'), say('separate.markAgain'));
  if (shelf.length > 0) checkSame(request, bad);
  if (found.length > 0) throw new ProblemError(found);
}

type Tell = (code: string, place: string | Saying, message: Saying, advice: Saying) => void;

function checkWay({ way, key, cutPairs, layers }: SeparateRequest, bad: Tell): void {
  if (cutPairs && way === 'light') bad('tones-in-pairs', 'picture.way', say('separate.tonesNotPaired'), say('separate.singleCuts'));
  if (cutPairs && key) bad('key-in-pairs', 'picture.key', say('separate.keyNotPaired'), say('separate.singleCuts'));
  if (key && layers === 1) bad('key-alone', 'picture.key', say('separate.keyAlone'), say('separate.moreForKey'));
}

function checkShelf({ shelf }: SeparateRequest, bad: Tell): void {
  if (shelf.length === 0) bad('shelf-empty', 'inks', say('separate.shelfEmpty'), say('separate.readDrawdown'));
  if (shelf.length > mostPots)
    bad('too-many-inks', 'picture.pots', say('separate.tooManyInks', { n: shelf.length }), say('separate.chooseInks', { most: mostPots }));
  const ids = new Set<string>();
  for (const pot of shelf) {
    if (ids.has(pot.id)) bad('ink-twice', `inks[#${pot.id}]`, say('separate.inkTwice'), say('separate.renameOne'));
    ids.add(pot.id);
  }
}

function checkWishes({ wishes = [], shelf, layers, alreadyPrinted = [], printedWith = [] }: SeparateRequest, bad: Tell): void {
  const ids = new Set(shelf.map((pot) => pot.id));
  if (wishes.length > layers)
    bad(
      'wishes-exceed-layers',
      'picture.wishes',
      say('separate.moreWishesThanLayers', { wishes: wishes.length, layers }),
      say('separate.moreLayersOrFewerWishes'),
    );
  wishes.forEach((wish, i) => {
    const place = `picture.wishes[${i}]`;
    if (wish.ink !== undefined && !ids.has(wish.ink))
      bad('ink-unknown', `${place}.ink`, say('separate.inkNotOnShelf', { ink: asName(wish.ink) }), say('separate.chooseShelfInk'));
    if (wish.strength !== undefined && !(wish.strength > 0 && wish.strength <= 1))
      bad(
        'share-out-of-range',
        `${place}.strength`,
        say('separate.strengthImpossible', { strength: figure(wish.strength, 3, false) }),
        say('separate.giveShare'),
      );
    if (wish.strength !== undefined && wish.ink === undefined)
      bad('strength-without-ink', `${place}.ink`, say('separate.strengthWithoutInk'), say('separate.nameInk'));
  });
  const known = new Set([...ids, ...printedWith.map((pot) => pot.id)]);
  alreadyPrinted.forEach((layer, i) => {
    for (const { id } of layer.parts)
      if (!known.has(id))
        bad(
          'ink-unknown',
          say('separate.printedLayer', { n: i + 1 }),
          say('separate.printedInkNotOnShelf', { ink: asName(id) }),
          say('separate.addReading'),
        );
  });
}

/** Inks that absorb and scatter alike make one ink: then all overlaps are coats of the same. Allowed, but inks without any colour are not. */
function checkSame({ shelf }: SeparateRequest, bad: Tell): void {
  const strongest = Math.max(...shelf.map(({ ink }) => Math.max(...ink.k, ...ink.s)));
  if (strongest < 0.02) bad('inks-colourless', 'inks', say('separate.inksClear'), say('separate.readColoured'));
}

/** Told beside the result. */
export function warnings(request: SeparateRequest): Problem[] {
  const out: Problem[] = [...request.picture.problems];
  const { shelf } = request;
  if (shelf.length > 1 && shelf.every(({ ink }) => alike(ink.k, shelf[0].ink.k) && alike(ink.s, shelf[0].ink.s))) {
    out.push(problem('warning', 'inks-all-same', 'inks', say('separate.inksAlike'), say('separate.addColours')));
  }
  return out;
}

function alike(a: Float64Array, b: Float64Array): boolean {
  return a.every((v, i) => Math.abs(v - b[i]) < 0.01);
}
