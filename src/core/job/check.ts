import { length, lengths, list as listOf, name as asName, say, share, type List, type Saying } from '../../words/say.ts';
import { problem, type Problem } from '../problem.ts';
import { mostCopies, mostLayers, type Job, type JobBundle, type JobCut } from './schema/schema.ts';
import { doneProblems } from './done.ts';
import { unknownFields } from './file/unknown.ts';
import { settleProblems, whereIn } from './place/where.ts';

type Add = (code: string, path: string, message: Saying, advice: Saying, severity?: Problem['severity']) => void;

/** Everything wrong in a Job that the schema cannot see: names that point nowhere, files that are missing, sizes that don't fit. */
export function checkJob(bundle: JobBundle): Problem[] {
  const { job } = bundle;
  const problems: Problem[] = [];
  const add: Add = (code, path, message, advice, severity = 'error') => problems.push(problem(severity, code, path, message, advice));
  checkNames(job, add);
  checkReferences(job, add);
  checkMixes(job, add);
  checkCopies(job, add);
  checkAttachments(bundle, add);
  checkSizes(job, add);
  problems.push(...doneProblems(job), ...unknownFields(job));
  const layers = job.layers.filter((l) => !l.off).length;
  if (layers > mostLayers) {
    add('too-many-layers', 'layers', say('job.tooManyLayers', { layers, most: mostLayers }), say('job.leaveSomeOut'));
  }
  return settleProblems(problems, job);
}

function checkNames(job: Job, add: Add): void {
  for (const list of ['forms', 'cuts', 'layers', 'inks', 'papers', 'materials'] as const) {
    const seen = new Map<string, number>();
    job[list].forEach((item, i) => {
      const before = seen.get(item.id);
      if (before !== undefined)
        add(
          'name-twice',
          `${list}[${i}].id`,
          say('job.idTwice', { id: asName(item.id), other: whereIn(`${list}[${before}]`, job) }),
          say('job.ownId'),
        );
      seen.set(item.id, i);
    });
  }
}

type Things = readonly { readonly id: string }[];

function checkReferences(job: Job, add: Add): void {
  const has = (things: Things, id: string): boolean => things.some((item) => item.id === id);
  const ids = (things: Things): List =>
    listOf(
      things.map((item) => asName(item.id)),
      'comma',
    );
  const use = (things: Things): Saying => (things.length > 0 ? say('job.useOneOf', { ids: ids(things) }) : say('job.addOne'));
  job.cuts.forEach((cut, i) => {
    cut.parts.forEach((part, k) => {
      if (!has(job.forms, part.form))
        add(
          'no-such-form',
          `cuts[${i}].parts[${k}].form`,
          say('job.noSuchForm', { cut: asName(cut.name), form: asName(part.form) }),
          use(job.forms),
        );
    });
    const leastMm = 10;
    if (cut.sheetMm && (cut.sheetMm[0] < job.image.widthMm + leastMm || cut.sheetMm[1] < job.image.heightMm + leastMm))
      add(
        'stencil-sheet-small',
        `cuts[${i}].sheetMm`,
        say('job.stencilSheetSmall', {
          cut: asName(cut.name),
          sheet: lengths(cut.sheetMm),
          image: lengths([job.image.widthMm, job.image.heightMm]),
        }),
        say('job.stencilSheetLarger', { least: lengths([job.image.widthMm + leastMm, job.image.heightMm + leastMm]) }),
      );
    if (cut.material !== undefined && job.materials.length > 0 && !has(job.materials, cut.material)) {
      add(
        'no-such-material',
        `cuts[${i}].material`,
        say('job.noSuchMaterial', { cut: asName(cut.name), material: asName(cut.material) }),
        use(job.materials),
      );
    }
  });
  job.layers.forEach((layer, i) => {
    const name = asName(layer.name);
    if (!has(job.cuts, layer.cut))
      add('no-such-cut', `layers[${i}].cut`, say('job.noSuchCut', { layer: name, cut: asName(layer.cut) }), use(job.cuts));
    if (layer.ink !== null && !has(job.inks, layer.ink))
      add(
        'no-such-ink',
        `layers[${i}].ink`,
        say('job.noSuchInk', { layer: name, ink: asName(layer.ink) }),
        job.inks.length > 0 ? say('job.useOneOrOpen', { ids: ids(job.inks) }) : say('job.leaveOpen'),
      );
    const named = [
      ...(layer.base === undefined ? [] : [[layer.base, `layers[${i}].base`] as const]),
      ...(layer.bases ?? []).map((b, k) => [b.ink, `layers[${i}].bases[${k}].ink`] as const),
    ];
    for (const [base, path] of named) {
      if (has(job.inks, base)) continue;
      const bases = job.inks.filter((k) => k.role !== 'ink');
      add(
        'no-such-base',
        path,
        say('job.noSuchBase', { layer: name, base: asName(base) }),
        bases.length > 0 ? say('job.useOneOrNone', { ids: ids(bases) }) : say('job.leaveOut'),
      );
    }
    const together = (layer.bases ?? []).reduce((sum, b) => sum + b.share, 0);
    if (layer.bases && Math.abs(together - 1) > 0.005)
      add(
        'bases-share',
        `layers[${i}].bases`,
        say('job.basesShare', { layer: name, together: share(together, 0) }),
        say('job.basesMakeOne'),
        'warning',
      );
  });
  const lists = [
    ['wanted', job.wanted],
    ['proofReadings', job.proofReadings],
  ] as const;
  for (const [list, items] of lists) {
    items.forEach((item, i) => {
      const { layers, coverages } = item;
      if (coverages && coverages.length !== layers.length)
        add(
          'coverages-count',
          `${list}[${i}].coverages`,
          say('job.coveragesCount', { n: coverages.length, layers: layers.length }),
          say('job.oneCoverageEach'),
        );
      for (const id of item.layers)
        if (!has(job.layers, id))
          add('no-such-layer', `${list}[${i}].layers`, say('job.noSuchLayer', { layer: asName(id) }), use(job.layers));
      if (item.paper !== undefined && !has(job.papers, item.paper))
        add('no-such-paper', `${list}[${i}].paper`, say('job.noSuchPaper', { paper: asName(item.paper) }), use(job.papers));
    });
  }
}

/** How often a cut lays its forms down, with all repeats. */
export function copiesOf(cut: JobCut): number {
  return cut.parts.reduce(
    (sum, { repeat }) => sum + (!repeat ? 1 : repeat.kind === 'rows' ? repeat.columns * repeat.rows : repeat.count),
    0,
  );
}

function checkCopies(job: Job, add: Add): void {
  job.cuts.forEach((cut, i) => {
    const copies = copiesOf(cut);
    if (copies > mostCopies)
      add('too-many-copies', `cuts[${i}].parts`, say('job.tooManyCopies', { copies, most: mostCopies }), say('job.fewerCopies'));
  });
}

function checkMixes(job: Job, add: Add): void {
  const byId = new Map(job.inks.map((ink) => [ink.id, ink]));
  const visiting = new Set<string>();
  const circular = (id: string): boolean => {
    const ink = byId.get(id);
    if (ink?.from !== 'mix') return false;
    if (visiting.has(id)) return true;
    visiting.add(id);
    const found = ink.parts.some((part) => circular(part.ink));
    visiting.delete(id);
    return found;
  };
  job.inks.forEach((ink, i) => {
    if (ink.from !== 'mix') return;
    const mix = asName(ink.name);
    ink.parts.forEach((part, k) => {
      if (!byId.has(part.ink))
        add('no-such-ink', `inks[${i}].parts[${k}].ink`, say('job.noSuchPart', { mix, ink: asName(part.ink) }), say('job.addOrTakeOut'));
    });
    if (circular(ink.id)) add('mix-of-itself', `inks[${i}].parts`, say('job.mixOfItself', { mix }), say('job.breakCircle'));
  });
}

function checkAttachments({ job, attachments }: JobBundle, add: Add): void {
  const need = (file: string, path: string, severity?: Problem['severity']): void => {
    if (!attachments.has(file))
      add('attachment-missing', path, say('job.fileMissing', { file: asName(file) }), say('job.putBack'), severity);
  };
  job.forms.forEach((form, i) => {
    if (form.drawing !== undefined) need(form.drawing, `forms[${i}].drawing`);
    if ([form.drawing, form.outline, form.made].filter((shape) => shape !== undefined).length !== 1) {
      add('form-without-shape', `forms[${i}]`, say('job.formWithoutShape', { form: asName(form.name) }), say('job.giveShape'));
    }
    if (form.read?.what === 'colours' && form.read.colours === undefined)
      add('no-colours-named', `forms[${i}].read`, say('job.noColoursNamed', { form: asName(form.name) }), say('job.nameColours'));
  });
  job.papers.forEach((paper, i) => {
    if (paper.printed) need(paper.printed.picture, `papers[${i}].printed.picture`);
  });
  job.layers.forEach((layer, i) => {
    if (layer.tone?.picture !== undefined) need(layer.tone.picture, `layers[${i}].tone.picture`);
    else if (layer.tone && layer.tone.share === undefined && !layer.off)
      add(
        'tone-without-picture',
        `layers[${i}].tone`,
        say('job.toneWithoutPicture', { layer: asName(layer.name) }),
        say('job.givePicture'),
        'note',
      );
  });
  // Stencils made from it stand on their own: the packet does not wait for it.
  if (job.picture) need(job.picture.file, 'picture.file', 'warning');
}

function checkSizes(job: Job, add: Add): void {
  const { widthMm, heightMm } = job.image;
  job.papers.forEach((paper, i) => {
    const [x, y] = paper.imageAtMm ?? [(paper.widthMm - widthMm) / 2, (paper.heightMm - heightMm) / 2];
    const over = Math.max(-x, -y, x + widthMm - paper.widthMm, y + heightMm - paper.heightMm);
    if (over > 0.001) {
      add(
        'image-off-sheet',
        `papers[${i}]`,
        say('job.imageOffSheet', {
          image: lengths([widthMm, heightMm]),
          over: length(over, 1),
          paper: asName(paper.name),
          sheet: lengths([paper.widthMm, paper.heightMm]),
        }),
        say('job.smallerImage'),
      );
    }
  });
  if (job.papers.length === 0) add('no-paper', 'papers', say('job.noPaper'), say('job.addPaper'), 'warning');
  if (job.layers.length === 0) add('no-layers', 'layers', say('job.noLayers'), say('job.addLayer'), 'warning');
  job.layers.forEach((layer, i) => {
    if (layer.ink === null && !layer.off)
      add('layer-open', `layers[${i}].ink`, say('job.layerOpen', { layer: asName(layer.name) }), say('job.chooseInk'), 'note');
  });
}
