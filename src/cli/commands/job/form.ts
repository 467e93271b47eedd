import { basename } from 'node:path';
import { colourEdges, cutsByColour, type ColourEdges } from '../../../core/asks/index.ts';
import { openDrawing, pathData, pencilShape, regionBox, type OpenDrawing } from '../../../core/form/index.ts';
import {
  fileStem,
  freshId,
  freshName,
  currentSchemaVersion,
  madeKinds,
  parseJob,
  usualShape,
  type Job,
  type JobBundle,
  type JobForm,
  type JobMade,
} from '../../../core/job/index.ts';
import { makeForm, type PlannedForm } from '../../../core/plan/index.ts';
import { fail, ProblemError } from '../../../core/problem.ts';
import { lengths, list, name as asName, say, share } from '../../../words/index.ts';
import { prepare } from '../../assets.ts';
import type { Call, Command } from '../../command.ts';
import { fileAt, readFileBytes } from '../../disk/disk.ts';
import { option, replaceFile } from '../../say/help.ts';
import { printProblems, takeJob } from '../../disk/load.ts';
import { placeOf } from '../../options.ts';
import { printJson, sayHere, showHere } from '../../reader.ts';
import { columns } from '../../say/table.ts';
import { numberOf, textOf } from '../../say/words.ts';
import { mustBeNew, writeNew } from '../../disk/write-file.ts';
import { writeJobTo } from '../../disk/write-job.ts';

export const form: Command = {
  name: 'form',
  usage: say('help.formUsage'),
  summary: say('help.formSummary'),
  help: [
    say('help.formText'),
    option('--read', say('help.formRead'), 'way'),
    option('--threshold PERCENT', say('help.formThreshold')),
    option('--each-colour', say('help.formEachColour'), 'way'),
    option(
      '--make',
      say('help.formMake', {
        kinds: list(
          madeKinds.map((kind) => asName(kind)),
          'comma',
        ),
      }),
      'name',
    ),
    option('--set', say('help.formSet'), 'parts'),
    option('--text', say('help.formLetters'), 'words'),
    option('--line', say('help.formLine'), 'csvFile'),
    option('--smooth MM', say('help.traceSmooth')),
    option('--width MM', say('help.formWidth')),
    option('--with', say('help.formWith'), 'job'),
    option('--out', say('help.formOut'), 'file'),
    option('--json', say('help.asJson')),
    replaceFile,
  ],
  options: {
    read: { type: 'string' },
    threshold: { type: 'string' },
    'each-colour': { type: 'string' },
    make: { type: 'string' },
    set: { type: 'string' },
    text: { type: 'string' },
    line: { type: 'string' },
    smooth: { type: 'string' },
    width: { type: 'string' },
    with: { type: 'string' },
    out: { type: 'string' },
    json: { type: 'boolean' },
    replace: { type: 'boolean' },
  },
  async run(call) {
    await prepare();
    const path = call.words[0];
    const shelf = textOf(call.options['with']);
    const bundle: JobBundle = shelf === undefined ? { job: bareJob(), attachments: new Map() } : takeJob(shelf);
    const out = textOf(call.options['out']);
    if (path !== undefined) {
      const bytes = readFileBytes(path);
      const open = openDrawing(bytes, path);
      const drawing = freshPath(bundle, basename(path));
      const attachments = new Map(bundle.attachments).set(drawing, bytes);
      const edges = textOf(call.options['each-colour']);
      if (edges !== undefined) return writeByColour({ ...bundle, attachments }, open, drawing, edges, call);
      if (out === undefined) return show(open, path, call);
      return write({ ...bundle, attachments }, { name: nameOf(path), drawing, ...readOf(call) }, out, call);
    }
    if (out === undefined) fail('no-file-named', placeOf('--out'), say('refusals.whichFile'), say('refusals.writeFormOut'));
    return write(bundle, madeOf(bundle.job, call), out, call);
  },
};

/** A job of nothing but an image to put a form on. */
const bareJob = (): Job => parseJob({ schemaVersion: currentSchemaVersion, title: 'form', image: { widthMm: 200, heightMm: 280 } });

/** How a drawing can be read: its size, its colours from back to front, what is doubtful. */
function show(open: OpenDrawing, path: string, call: Call): number {
  const read = open.read(readOf(call).read);
  const size = regionBox(read.region);
  if (call.options['json']) {
    printJson({ widthMm: read.widthMm, heightMm: read.heightMm, reading: read.reading, seen: read.seen });
    return 0;
  }
  console.log(
    sayHere('inkAnswers.drawingIs', {
      file: asName(path),
      size: lengths([size.maxX - size.minX, size.maxY - size.minY], '×', 1),
      n: read.region.rings.length,
    }),
  );
  for (const line of columns(
    open.seen.colours.map(({ colour, share: part }) => [colour, showHere(share(part))]),
    { indent: '  ', right: [1] },
  ))
    console.log(line);
  printProblems(read.problems, console.log);
  return 0;
}

function readOf({ options }: Call): Pick<JobForm, 'read'> {
  const way = textOf(options['read']);
  const threshold = options['threshold'] === undefined ? {} : { threshold: numberOf(options['threshold'], '--threshold', 50, 1, 99) / 100 };
  if (way === undefined) return options['threshold'] === undefined ? {} : { read: { what: 'silhouette', ...threshold } };
  if (way === 'silhouette' || way === 'dark') return { read: { what: way, ...threshold } };
  if (way === 'white') return { read: { what: 'silhouette', white: 'shape', ...threshold } };
  const colours = way.split(/[,\s]+/).filter(Boolean);
  if (colours.length === 0 || !colours.every((colour) => /^#?[0-9a-f]{6}$/i.test(colour)))
    fail('no-such-reading', placeOf('--read'), say('cli.cannotUse', { text: asName(way) }), say('refusals.sayRead'));
  return { read: { what: 'colours', colours: colours.map((colour) => `#${colour.replace('#', '').toLowerCase()}`), ...threshold } };
}

/** A made shape, or a line drawn by hand. */
function madeOf(job: Job, { options }: Call): Pick<JobForm, 'name' | 'made' | 'outline'> {
  const line = textOf(options['line']);
  if (line !== undefined) {
    const points = new TextDecoder()
      .decode(readFileBytes(line))
      .split(/\r?\n/)
      .map((row) =>
        row
          .split(/[;,\t ]+/)
          .filter(Boolean)
          .map(Number),
      )
      .filter((row) => row.length >= 2 && row.every(Number.isFinite))
      .map(([x, y]): [number, number] => [x, y]);
    const { rings } = pencilShape(points, numberOf(options['smooth'], '--smooth', 0.6, 0, 10));
    if (rings.length === 0) fail('no-line', fileAt(line), say('refusals.noLine'), say('refusals.writeLine'));
    return {
      name: nameOf(line),
      outline: rings.map((ring) => Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i], ring[2 * i + 1]])),
    };
  }
  const kind = textOf(options['make']);
  const known = madeKinds.find((one) => one === kind);
  if (known === undefined)
    return fail(
      'no-such-shape',
      placeOf('--make'),
      kind === undefined ? say('refusals.whichForm') : say('cli.cannotUse', { text: asName(kind) }),
      say('refusals.sayMake', {
        kinds: list(
          madeKinds.map((one) => asName(one)),
          'comma',
        ),
      }),
    );
  const set = Object.fromEntries(
    (textOf(options['set']) ?? '')
      .split(/[,\s]+/)
      .filter(Boolean)
      .map((word): [string, string | number] => {
        const [key, value = ''] = word.split('=');
        return [key, value !== '' && Number.isFinite(Number(value)) ? Number(value) : value];
      }),
  );
  const usual = usualShape(known, job.image);
  const strange = Object.keys(set).filter((key) => key === 'kind' || !Object.hasOwn(usual, key));
  if (strange.length > 0)
    fail(
      'no-such-figure',
      placeOf('--set'),
      say('cli.cannotUse', { text: asName(strange[0]) }),
      say('refusals.figuresOf', {
        all: list(
          Object.keys(usual)
            .filter((key) => key !== 'kind')
            .map((key) => asName(key)),
          'comma',
        ),
      }),
    );
  const text = textOf(options['text']);
  const made = { ...usual, ...set, ...(text === undefined ? {} : { text: text.replaceAll('\\n', '\n') }) } as JobMade;
  return { name: made.kind === 'letters' ? made.text.split('\n')[0].slice(0, 40) : made.kind, made };
}

function write(
  { job, attachments }: JobBundle,
  shape: Pick<JobForm, 'name' | 'drawing' | 'read' | 'made' | 'outline'>,
  out: string,
  call: Call,
): number {
  const width = call.options['width'] === undefined ? {} : { widthMm: numberOf(call.options['width'], '--width', 100, 1, 5000) };
  const name = freshName(job.forms, shape.name);
  const next = parseJob({ ...job, forms: [...job.forms, { ...shape, ...width, id: freshId(job.forms, name), name }] });
  const added = next.forms[next.forms.length - 1];
  const { form: planned, problems } = makeForm(added, added.drawing === undefined ? undefined : attachments.get(added.drawing));
  printProblems(problems);
  if (!planned) throw new ProblemError(problems.filter((p) => p.severity === 'error'));
  const replace = call.options['replace'] === true;
  if (/\.svg$/i.test(out)) writeNew(out, replace, () => svgOf(planned));
  else {
    if (call.options['with'] === undefined) fail('no-such-format', fileAt(out), say('refusals.formAsSvg'), say('refusals.endInSvgOrWith'));
    writeJobTo(out, { job: next, attachments }, replace);
  }
  const size = lengths([planned.widthMm, planned.heightMm], '×', 2);
  console.log(sayHere('inkAnswers.traced', { file: asName(out), size, n: planned.region.rings.length }));
  return 0;
}

const svgOf = ({ region, widthMm, heightMm }: PlannedForm): string => {
  const width = widthMm.toFixed(2),
    height = heightMm.toFixed(2);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">\n  <path fill-rule="evenodd" d="${pathData(region)}"/>\n</svg>\n`;
};

function writeByColour(bundle: JobBundle, open: OpenDrawing, drawing: string, edges: string, call: Call): number {
  const way = colourEdges.find((one): one is ColourEdges => one === edges);
  if (way === undefined)
    return fail(
      'no-such-way',
      placeOf('--each-colour'),
      say('cli.cannotUse', { text: asName(edges) }),
      say('refusals.sayEachColour', {
        all: list(
          colourEdges.map((one) => asName(one)),
          'or',
        ),
      }),
    );
  const out = textOf(call.options['out']);
  if (call.options['with'] === undefined || out === undefined)
    return fail('no-job-named', placeOf('--with'), say('refusals.layersNeedJob'), say('refusals.writeWithAndOut'));
  mustBeNew(out, call.options['replace'] === true);
  const { job } = bundle;
  const widthMm = call.options['width'] === undefined ? {} : { widthMm: numberOf(call.options['width'], '--width', 100, 1, 5000) };
  const next = cutsByColour(job, open, {
    drawing,
    name: nameOf(drawing),
    edges: way,
    middleMm: [job.image.widthMm / 2, job.image.heightMm / 2],
    ...widthMm,
  });
  writeJobTo(out, { ...bundle, job: next }, call.options['replace'] === true);
  for (const layer of next.layers.slice(job.layers.length)) console.log(`  ${layer.name}`);
  console.log(sayHere('inkAnswers.layersMade', { file: asName(out), n: next.layers.length - job.layers.length }));
  return 0;
}

const nameOf = (path: string): string =>
  basename(path)
    .replace(/\.[^.]+$/, '')
    .slice(0, 200) || 'form';

function freshPath({ attachments }: JobBundle, file: string): string {
  const ending = /\.[a-z0-9]+$/i.exec(file)?.[0].toLowerCase() ?? '.svg';
  for (let n = 1; ; n++) {
    const path = `${fileStem(file.replace(/\.[^.]+$/, ''))}${n === 1 ? '' : `-${n}`}${ending}`;
    if (!attachments.has(path)) return path;
  }
}
