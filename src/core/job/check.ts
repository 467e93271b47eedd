import { problem, type Problem } from '../problem.ts';
import { mostLayers, type Job, type JobBundle } from './schema.ts';

type Add = (code: string, place: string, message: string, advice: string, severity?: Problem['severity']) => void;

/** Everything wrong in a Job that the schema cannot see: names that point nowhere, files that are missing, sizes that don't fit. */
export function checkJob(bundle: JobBundle): Problem[] {
  const { job } = bundle;
  const problems: Problem[] = [];
  const add: Add = (code, place, message, advice, severity = 'error') => problems.push(problem(severity, code, place, message, advice));
  checkNames(job, add);
  checkReferences(job, add);
  checkMixes(job, add);
  checkAttachments(bundle, add);
  checkSizes(job, add);
  if (job.layers.filter((l) => !l.off).length > mostLayers) {
    add(
      'too-many-layers',
      'layers',
      `There are ${job.layers.filter((l) => !l.off).length} layers; Laydown foresees ${mostLayers} in one run of a sheet.`,
      'Leave some out (“off”), or plan the rest as a second job over the printed sheets.',
    );
  }
  return problems;
}

function checkNames(job: Job, add: Add): void {
  for (const list of ['forms', 'cuts', 'layers', 'inks', 'papers', 'materials'] as const) {
    const seen = new Map<string, number>();
    job[list].forEach((item, i) => {
      const before = seen.get(item.id);
      if (before !== undefined)
        add('name-twice', `${list}[${i}].id`, `“${item.id}” is already the id of ${list}[${before}].`, 'Give each its own id.');
      seen.set(item.id, i);
    });
  }
}

function checkReferences(job: Job, add: Add): void {
  const has = (list: readonly { id: string }[], id: string): boolean => list.some((item) => item.id === id);
  const known = (list: readonly { id: string }[]): string => list.map((item) => item.id).join(', ') || 'none';
  job.cuts.forEach((cut, i) => {
    cut.parts.forEach((part, k) => {
      if (!has(job.forms, part.form))
        add(
          'no-such-form',
          `cuts[${i}].parts[${k}].form`,
          `Cut “${cut.name}” uses the form “${part.form}”, which the job doesn't have.`,
          `Use one of: ${known(job.forms)}.`,
        );
    });
    if (cut.material !== undefined && job.materials.length > 0 && !has(job.materials, cut.material)) {
      add(
        'no-such-material',
        `cuts[${i}].material`,
        `Cut “${cut.name}” is to be cut from “${cut.material}”, which is not in the list of materials.`,
        `Use one of: ${known(job.materials)}.`,
      );
    }
  });
  job.layers.forEach((layer, i) => {
    if (!has(job.cuts, layer.cut))
      add(
        'no-such-cut',
        `layers[${i}].cut`,
        `Layer “${layer.name}” uses the cut “${layer.cut}”, which the job doesn't have.`,
        `Use one of: ${known(job.cuts)}.`,
      );
    if (layer.ink !== null && !has(job.inks, layer.ink))
      add(
        'no-such-ink',
        `layers[${i}].ink`,
        `Layer “${layer.name}” is printed with “${layer.ink}”, an ink the job doesn't have.`,
        `Use one of: ${known(job.inks)}; or null to leave it open.`,
      );
    if (layer.base !== undefined && !has(job.inks, layer.base))
      add(
        'no-such-base',
        `layers[${i}].base`,
        `Layer “${layer.name}” is let down with “${layer.base}”, which the job doesn't have.`,
        `Use one of: ${known(job.inks.filter((k) => k.role !== 'ink'))}, or leave it out.`,
      );
  });
  const lists = [
    ['wanted', job.wanted],
    ['proofReadings', job.proofReadings],
  ] as const;
  for (const [list, items] of lists) {
    items.forEach((item, i) => {
      for (const id of item.layers)
        if (!has(job.layers, id))
          add(
            'no-such-layer',
            `${list}[${i}].layers`,
            `It speaks of the layer “${id}”, which the job doesn't have.`,
            `Use one of: ${known(job.layers)}.`,
          );
      if (item.paper !== undefined && !has(job.papers, item.paper))
        add(
          'no-such-paper',
          `${list}[${i}].paper`,
          `It speaks of the paper “${item.paper}”, which the job doesn't have.`,
          `Use one of: ${known(job.papers)}.`,
        );
    });
  }
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
    ink.parts.forEach((part, k) => {
      if (!byId.has(part.ink))
        add(
          'no-such-ink',
          `inks[${i}].parts[${k}].ink`,
          `The mix “${ink.name}” takes “${part.ink}”, an ink the job doesn't have.`,
          'Add that ink or take the part out.',
        );
    });
    if (circular(ink.id))
      add(
        'mix-of-itself',
        `inks[${i}].parts`,
        `The mix “${ink.name}” ends up containing itself.`,
        'Take one of the mixes out of the circle.',
      );
  });
}

function checkAttachments({ job, attachments }: JobBundle, add: Add): void {
  const need = (path: string, place: string, what: string, severity?: Problem['severity']): void => {
    if (!attachments.has(path))
      add(
        'attachment-missing',
        place,
        `${what} needs the file “${path}”, which is not in the job's folder.`,
        'Put the file back there, or choose another.',
        severity,
      );
  };
  job.forms.forEach((form, i) => {
    if (form.drawing !== undefined) need(form.drawing, `forms[${i}].drawing`, `Form “${form.name}”`);
    if ((form.drawing === undefined) === (form.outline === undefined)) {
      add(
        'form-without-shape',
        `forms[${i}]`,
        `Form “${form.name}” needs either a drawing or an outline, and only one of them.`,
        'Give it one.',
      );
    }
  });
  job.papers.forEach((paper, i) => {
    if (paper.printed) need(paper.printed.picture, `papers[${i}].printed.picture`, `Paper “${paper.name}”`);
  });
  // Stencils made from it stand on their own: the packet does not wait for it.
  if (job.picture) need(job.picture.file, 'picture.file', 'The picture to be made into stencils', 'warning');
}

function checkSizes(job: Job, add: Add): void {
  job.papers.forEach((paper, i) => {
    const [x, y] = paper.imageAtMm ?? [(paper.widthMm - job.image.widthMm) / 2, (paper.heightMm - job.image.heightMm) / 2];
    const over = Math.max(-x, -y, x + job.image.widthMm - paper.widthMm, y + job.image.heightMm - paper.heightMm);
    if (over > 0.001) {
      add(
        'image-off-sheet',
        `papers[${i}]`,
        `The image (${job.image.widthMm} × ${job.image.heightMm} mm) hangs ${over.toFixed(1)} mm over the edge of “${paper.name}” (${paper.widthMm} × ${paper.heightMm} mm).`,
        'Make the image smaller, move it on the sheet, or take a larger sheet.',
      );
    }
  });
  if (job.papers.length === 0)
    add('no-paper', 'papers', 'The job has no paper yet.', 'Add at least one, with a reading of its colour.', 'warning');
  if (job.layers.length === 0)
    add('no-layers', 'layers', 'The job has no layers yet.', 'Add a layer: a cut, a side of it, and an ink.', 'warning');
  job.layers.forEach((layer, i) => {
    if (layer.ink === null && !layer.off)
      add(
        'layer-open',
        `layers[${i}].ink`,
        `Layer “${layer.name}” is open: no ink is chosen yet, so it is left out of the proofs.`,
        'Choose an ink when you are ready.',
        'note',
      );
  });
}
