// Every licence that the built page carries on: its libraries with all they bring along, the fonts, the compiled parts.
// Ours, because the bundler's own list leaves out what only a worker uses.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { root } from './packages.mjs';

/** Libraries that only the page draws with; all others are in `dependencies`. */
const pageOnly = ['preact', '@preact/signals', 'idb'];

const read = (path) => readFileSync(path, 'utf8').trim();

function licenceOf(folder) {
  const file = readdirSync(folder).find((name) => /^(licen[cs]e|copying|notice)(\.|-|$)/i.test(name) || /^MIT-LICENSE/i.test(name));
  if (file) return read(`${folder}/${file}`);
  // Some keep it as the last chapter of what there is to read.
  const readme = readdirSync(folder).find((name) => /^readme(\.|$)/i.test(name));
  return (readme && /^#+[^\n]*licen[cs]e[^]*$/im.exec(read(`${folder}/${readme}`))?.[0]) ?? '';
}

/** One text with the name, version, licence and its wording of each. Throws where a package names no licence at all. */
export function licenceText() {
  const { dependencies } = JSON.parse(read(`${root}package.json`));
  const found = new Map();
  const visit = (name, from) => {
    let at = from;
    while (!existsSync(`${at}node_modules/${name}/package.json`)) {
      if (at === root) return;
      at = at.replace(/node_modules\/(?:@[^/]+\/)?[^/]+\/$/, '');
    }
    const folder = `${at}node_modules/${name}`;
    if (found.has(folder)) return;
    const manifest = JSON.parse(read(`${folder}/package.json`));
    const licence = typeof manifest.license === 'string' ? manifest.license : manifest.license?.type;
    if (!licence) throw new Error(`${name} names no licence.`);
    found.set(folder, { title: `${manifest.name} ${manifest.version} (${licence})`, text: licenceOf(folder) });
    for (const inner of Object.keys(manifest.dependencies ?? {})) visit(inner, `${folder}/`);
  };
  for (const name of [...Object.keys(dependencies), ...pageOnly]) visit(name, root);
  const parts = [
    { title: 'Laydown (MIT)', text: read(`${root}LICENSE`) },
    { title: 'Open Sans (Apache-2.0)', text: read(`${root}assets/OpenSans-LICENSE.txt`) },
    { title: 'Little CMS, compiled (MIT)', text: read(`${root}src/core/image/lcms/LICENSE.md`) },
    { title: 'Faces: numbers of @vladmandic/face-api (MIT)', text: read(`${root}src/core/image/faces/LICENSE.md`) },
    ...[...found.values()].sort((a, b) => (a.title < b.title ? -1 : 1)),
  ];
  return parts.map(({ title, text }) => `${title}\n${'='.repeat(title.length)}\n\n${text}\n`).join('\n\n');
}
