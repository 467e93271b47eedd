import { lampName, underLamp } from '../../core/asks/index.ts';
import type { Illuminant } from '../../core/colour/index.ts';
import type { Plan } from '../../core/plan/index.ts';
import { name as asName, figure } from '../../words/index.ts';
import { smallProof, type ProofImage } from '../proof.ts';
import type { Voice } from '../voice.ts';
import { inkLine } from '../pages/words.ts';
import { indexedPng, rgbPng } from './png.ts';

/** Beside the light that prints are judged by: a warm lamp and a cold one. */
const otherLamps: readonly Illuminant[] = ['A', 'LED-B5'];

/** The longer side of the pictures, pixels, at most. */
const largePx = 1000;
const smallPx = 420;

/**
 * The print as one page for a class or a customer: on every paper, and how it comes about run by run. One file that needs no other, runs nothing and asks
 * nobody; it opens in any browser. Only names and pictures are in it, nothing to work from.
 */
export function showPage(plan: Plan, voice: Voice): string {
  const { title, maker, image } = plan.job;
  const [paper] = plan.papers;
  const h = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
  const prints = plan.papers.map((one) => {
    const says = h(voice.say('packet.showOn', { paper: asName(one.name) }));
    return `<figure style="background:${one.swatch.srgb}"><img src="${picture(plan, one, plan.layers.length, largePx)}" alt="${says}"></figure><figcaption>${h(one.name)}</figcaption>`;
  });
  const runs = paper
    ? plan.layers.map((layer) => {
        const ink = voice.tell(inkLine(plan, layer));
        const says = h(voice.say('packet.showAfter', { run: figure(layer.run), layer: asName(layer.name) }));
        return `<li><img style="background:${paper.swatch.srgb}" src="${picture(plan, paper, layer.run, smallPx)}" alt="${says}"><p><b>${layer.run} ${h(layer.name)}</b><i style="background:${layer.swatch?.srgb ?? 'none'}"></i>${h(ink)}</p></li>`;
      })
    : [];
  const lit = otherLamps.map((lamp) => {
    const says = voice.tell(lampName(lamp));
    const on = plan.papers.map((one) => {
      const there = underLamp(one, lamp);
      const alt = h(voice.say('packet.showLit', { paper: asName(one.name), lamp: lampName(lamp) }));
      return `<li><img style="background:${there.swatch.srgb}" src="${picture(plan, there, plan.layers.length, smallPx)}" alt="${alt}"><p>${h(one.name)}</p></li>`;
    });
    return `<h3>${h(says)}</h3>\n<ul class="runs">${on.join('\n')}</ul>`;
  });
  return `<!doctype html>
<html lang="${voice.reader.language}">
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${h(title)}</title>
<style>
html{background:#868686;color:#000;font:1.125rem/1.4 'Open Sans',system-ui,sans-serif}
body{margin:0 auto;padding:2rem clamp(1rem,4vw,4rem);max-width:110rem}
h1,h2{line-height:1.15;overflow-wrap:anywhere}h1{margin:0;font-size:clamp(1.75rem,4vw,3rem)}h2{border-top:3px solid #000;padding-top:1rem;margin-top:3rem}
.prints{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(22rem,100%),1fr));gap:2rem;align-items:start}
.prints figure{margin:0;padding:5%}.prints img,.runs img{display:block;width:100%;aspect-ratio:${image.widthMm}/${image.heightMm}}
.prints div:first-child{grid-column:1/-1;justify-self:center;width:min(100%,calc(85vh*${(image.widthMm / image.heightMm).toFixed(4)}))}
figcaption{padding-top:.5rem;font-weight:600}
.runs{list-style:none;margin:0;padding:0;display:grid;grid-template-columns:repeat(auto-fill,minmax(min(13rem,100%),1fr));gap:1.5rem}
.runs img{box-sizing:border-box;padding:4%}.runs p{margin:.5rem 0 0;overflow-wrap:anywhere}.runs b{display:block}.runs i{display:inline-block;width:1em;height:1em;margin-right:.5em;vertical-align:-.1em;border:1px solid #000}
@media print{html{background:#fff}}
</style>
<h1>${h(title)}</h1>
<p>${h(maker)}</p>
<main>
<div class="prints">${prints.map((one) => `<div>${one}</div>`).join('\n')}</div>
${runs.length > 0 ? `<h2>${h(voice.say('packet.showRuns'))}</h2>\n<ol class="runs">${runs.join('\n')}</ol>` : ''}
${plan.papers.length > 0 ? `<h2>${h(voice.say('packet.showLight'))}</h2>\n${lit.join('\n')}` : ''}
<p><small>${h(voice.say('packet.showForeseen'))}</small></p>
</main>
</html>
`;
}

function picture(plan: Plan, paper: Plan['papers'][number], run: number, mostPx: number): string {
  const every = Math.max(1, Math.ceil(Math.max(plan.codes.width, plan.codes.height) / mostPx));
  return `data:image/png;base64,${base64(pngOf(smallProof(plan, paper, run, every)))}`;
}

function pngOf(proof: ProofImage): Uint8Array {
  return proof.kind === 'indexed' ? indexedPng(proof.image, proof.mmPerPx) : rgbPng(proof.width, proof.height, proof.rgb, proof.mmPerPx);
}

/** A call takes only so many characters at once. */
const chunk = 0x8000;

function base64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += chunk) text += String.fromCharCode(...bytes.subarray(at, at + chunk));
  return btoa(text);
}
