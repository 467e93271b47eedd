import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

/** A text in core's sources; each value in it, and each run of values, is written `{}`. */
export interface CoreText {
  readonly template: string;
  readonly at: string;
}

const folder = fileURLToPath(new URL('../src/', import.meta.url));
/** Where texts are said in English and drawn in any language: core, the pages of the packet, and the Workbench's worker. */
const rooms = ['core', 'packet', 'workbench/worker'];

/** Functions whose arguments nobody reads: what is remembered is found again by them. */
const unread = new Set(['memory.part', 'path.push', 'JSON.stringify']);
/** Fields that hold a kind, which the screen has its own word for. */
const kinds = new Set(['what', 'role', 'code', 'kind', 'size', 'transform']);
/** Kinds that stand in lists. */
const kindsInLists = new Set(['move image', 'turn image', 'hinge elsewhere', 'a little']);
/** Where texts are names in a file format, or units and sheets as the whole world writes them. */
const notWords: readonly RegExp[] = [
  /^form\/dxf-\w+\.ts (?:[A-Z0-9]+|AcDb\w+)$/,
  /^form\/fit\.ts /,
  /^form\/svg\/guard\.ts <svg/,
  /^form\/svg\/read-svg\.ts (?:xM|prepareDrawings|Min|Max)/,
  /^form\/svg\/style\.ts translate/,
  /^ink\/import\/(?:cgats|cxf)\.ts \w+$/,
  /^separate\/kernels\/search-wasm\.ts /,
  /^separate\/picture\/\w+\.ts (?:\w+|ICC_PROFILE\s*|VP8 )$/u,
  /^units\/(?:paper-sizes|length|area)\.ts /,
  /^units\/amount\.ts (?:fl|fluid|\{\})/,
  /^edition\/numbering\.ts [IVXLCDM]+$/,
  /^(?:problem|task)\.ts (?:ProblemError|Cancelled)$/,
  /^job\/json-schema\.ts /,
  /^job\/file-names\.ts NFKD$/,
  // The head of the register of sheets is a row of a file that programs read.
  /^edition\/tables\.ts signed on$/,
  // Files for machines, operators of PDF, jobs that only tests print.
  /^packet\/files\//,
  /^packet\/pdf\/(?:book|page|picture|numbers|type)\.ts /,
  /^packet\/packet-jobs\.ts /,
  /^workbench\/worker\/(?:digest|parcel)\.ts /,
];

const sources = (at: string): string[] =>
  readdirSync(at, { withFileTypes: true }).flatMap((e) =>
    e.isDirectory() ? sources(join(at, e.name)) : /(?<!\.test|\.d)\.ts$/.test(e.name) ? [join(at, e.name)] : [],
  );

const twoWords = /\p{L}{2,}[^\p{L}]* [^\p{L}]*\p{L}{2,}|\p{L}{2,} |[ ,;]\p{L}{2,}|\p{L}{2,}[:,;.]+ /u;

/** Every text of core that can come before a reader: sentences, labels, and pieces of sentences. */
export function coreTexts(): CoreText[] {
  const found = new Map<string, CoreText>();
  for (const file of rooms.flatMap((room) => sources(join(folder, room)))) {
    const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
    const name = file
      .slice(folder.length)
      .replaceAll('\\', '/')
      .replace(/^core\//, '');
    visit(source, false);

    function visit(node: ts.Node, inText: boolean): void {
      if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return;
      if (ts.isCallExpression(node) && unread.has(node.expression.getText()))
        return void node.arguments.slice(1).forEach((a) => visit(a, false));
      if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) || ts.isTemplateExpression(node)) note(node, inText);
      ts.forEachChild(node, (child) => visit(child, inText || ts.isTemplateSpan(node)));
    }

    function note(node: ts.StringLiteral | ts.NoSubstitutionTemplateLiteral | ts.TemplateExpression, inText: boolean): void {
      const { parent } = node;
      if (ts.isBinaryExpression(parent) && /^[=!]==$/.test(parent.operatorToken.getText())) return;
      if (ts.isCaseClause(parent) || ts.isElementAccessExpression(parent) || ts.isComputedPropertyName(parent)) return;
      if (ts.isPropertyAssignment(parent) && (parent.name === node || kinds.has(parent.name.getText()))) return;
      if (
        ts.isCallExpression(parent) &&
        ts.isPropertyAccessExpression(parent.expression) &&
        /^(?:endsWith|startsWith|includes|split|replace|replaceAll)$/.test(parent.expression.name.text)
      )
        return;
      const template = ts.isTemplateExpression(node)
        ? node.head.text + node.templateSpans.map((s) => `{}${s.literal.text}`).join('')
        : node.text;
      const joins =
        ts.isCallExpression(parent) && ts.isPropertyAccessExpression(parent.expression) && parent.expression.name.text === 'join';
      const whole = (joins ? `{}${template}{}` : template).replace(/\{\}(?:\s*\{\})+/g, '{}');
      if (
        !/\p{L}{2}/u.test(template.replace(/\b(?:mm|cm|min|µm|kg)\b/g, '')) ||
        kindsInLists.has(template) ||
        /^[\s<]*[a-z]+(?:-[a-z]+)+$/.test(template)
      )
        return;
      if (!twoWords.test(template) && !inText && !/^\p{Lu}\p{L}/u.test(template)) return;
      if (notWords.some((one) => one.test(`${name} ${template}`))) return;
      if (!found.has(whole))
        found.set(whole, { template: whole, at: `${name}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1}` });
    }
  }
  return [...found.values()];
}
