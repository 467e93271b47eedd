import { cautions } from '../../core/edition/index.ts';
import { shownBy } from '../../core/plan/parts/costs.ts';
import { drawnExtent, registerMarks } from '../marks.ts';
import { ratesOf } from '../../core/plan/parts/stencils.ts';
import { sayLength } from '../../core/units/index.ts';
import { cornersOf, sharpDeg, type Corner } from '../../core/stencil/index.ts';
import { sayUses } from '../cut-uses.ts';
import type { Page } from '../pdf/page.ts';
import { seams } from '../tiles.ts';
import { widestPlace } from '../widest-place.ts';
import { caution, column, fact, sideInWords, steps } from './parts.ts';
import { lengthIn, sizeIn, startPage, type, type Frame, type Pages, type PlannedLayer, type Setting } from './setting.ts';
import { registerMark, tileMap, tilingOf, trueSizePages } from './true-size.ts';
import { inkName, materialOf, minutesInWords, plural, timesInWords } from './words.ts';

/** The drawing at the foot of the page, seen from the side. */
const diagramHighMm = 62;

/** One page of facts for each stencil, then the stencil at true size. */
export function* cutPages(setting: Setting): Pages {
  for (const layer of setting.plan.layers) {
    factsPage(setting, layer);
    yield;
    yield* trueSizePages(setting, {
      name: `${layer.name} — run ${layer.run}, ${sideInWords(layer)}`,
      say: 'Printed side faces the mesh. Grey drops out, white stays.',
      extent: drawnExtent(setting.plan.job.image, layer.stencil.sheet),
      draw: (page, placing, at) => drawTrueSize(setting, layer, page, placing, at),
    });
  }
}

function drawTrueSize(
  setting: Setting,
  layer: PlannedLayer,
  page: Page,
  placing: { xMm: number; yMm: number; turned?: boolean },
  at: (x: number, y: number) => [number, number],
): void {
  const { stencil } = layer;
  const { image } = setting.plan.job;
  page.region(stencil.prints, placing, { fill: '#e4e4e4' }, 0.01);
  page.outlines(setting.cutLines(layer).outlines, placing, { stroke: '#000000', lineMm: 0.25 });
  for (const corner of sharpCorners(layer)) {
    const [x, y] = at(corner.atMm[0], corner.atMm[1]);
    page.circle(x, y, 1.1, { stroke: '#000000', lineMm: 0.12 });
  }
  for (const bridge of stencil.bridges) {
    page.region(bridge.region, placing, { stroke: '#000000', lineMm: 0.12, dashMm: [0.8, 0.8] });
    // Its name stands beside it, out of the knife's way.
    const dx = bridge.to[0] - bridge.from[0],
      dy = bridge.to[1] - bridge.from[1];
    const off = (bridge.widthMm / 2 + 2.6) / (Math.hypot(dx, dy) || 1);
    const [x, y] = at((bridge.from[0] + bridge.to[0]) / 2 - dy * off, (bridge.from[1] + bridge.to[1]) / 2 + dx * off);
    page.text(x, y + 1, bridge.id, { size: 8, weight: 'semibold', align: 'centre' });
  }
  stencil.islands.forEach((island) => {
    if (island.handled !== 'bridged') return;
    const inside = widestPlace(island.region);
    if (!inside || inside.widthMm < 11) return;
    const [x, y] = at(inside.x, inside.y);
    page.text(x, y + 1, 'island', { size: 8, align: 'centre', turned: placing.turned });
  });
  for (const piece of stencil.loosePieces) {
    const [x, y] = at(piece.at[0], piece.at[1]);
    page.circle(x, y, 3.4, { fill: '#ffffff', stroke: '#000000', lineMm: 0.3 });
    page.text(x, y + 1.7, String(piece.number), { size: 10, weight: 'bold', align: 'centre' });
  }
  const [ax, ay] = at(0, 0),
    [bx, by] = at(image.widthMm, image.heightMm);
  page.rect(Math.min(ax, bx), Math.min(ay, by), Math.abs(bx - ax), Math.abs(by - ay), {
    stroke: '#000000',
    lineMm: 0.15,
    dashMm: [1, 1.5],
  });
  for (const mark of registerMarks(image, stencil.sheet)) registerMark(page, ...at(mark.x, mark.y));
  const hinge = setting.plan.job.screen?.hinge;
  const said = `top — this face to the mesh${hinge === undefined ? '' : hinge === 'top' ? ' — hinge on this side' : ` — hinge ${hinge}`}`;
  for (const share of [0.25, 0.75]) {
    const [x, y] = at(image.widthMm * share, -3);
    page.text(x, y, said, { size: 8, weight: 'semibold', align: 'centre', turned: placing.turned });
  }
}

/** Where the knife must stop just so: the paper would tear on. */
const sharpCorners = (layer: PlannedLayer): Corner[] => cornersOf(layer.stencil.cutLines).filter((c) => c.inner && c.turnDeg > sharpDeg);

function factsPage(setting: Setting, layer: PlannedLayer): void {
  const { plan } = setting;
  const { stencil } = layer;
  const { knife, certificate, sheet } = stencil;
  const frame = startPage(setting, { step: 2, title: `Cut: ${layer.name}`, side: sideInWords(layer), runs: [layer.run] });
  const { page, top } = frame;
  const picture = column(frame, 0, 4),
    words = column(frame, 4, 2);
  const size = placingMap(setting, layer, frame, picture.x, top, picture.width, Math.min(142, Math.max(30, frame.bottom - top - 104)));

  const material = materialOf(plan, layer);
  const cut = plan.cuts.find((c) => c.id === layer.cutId);
  const use = cut?.uses.find((u) => u.layerId === layer.id);
  let y = top;
  y = fact(
    page,
    words.x,
    y,
    words.width,
    'Material',
    material ? `${material.name}, ${lengthIn(setting, material.thicknessMm)}` : 'your choice',
    type.strong,
  );
  y = fact(
    page,
    words.x,
    y,
    words.width,
    'Sheet to begin with',
    sizeIn(setting, sheet.maxX - sheet.minX, sheet.maxY - sheet.minY),
    type.head,
  );
  y = fact(page, words.x, y, words.width, 'Knife', `${alongIn(setting, knife.metres, 1)}, ${plural(knife.corners, 'corner')}`, type.strong);
  y = fact(
    page,
    words.x,
    y,
    words.width,
    `Time, at ${alongIn(setting, ratesOf(plan.job).metresPerMinute)} a minute`,
    `${minutesInWords(knife.minutes)}, ${knife.difficulty}`,
    type.strong,
  );
  y = fact(page, words.x, y, words.width, 'Cut-outs to lift', String(knife.pieces), type.strong);
  y = fact(
    page,
    words.x,
    y,
    words.width,
    'Least strip, least opening',
    material ? `${lengthIn(setting, material.leastBridgeMm)}, ${lengthIn(setting, material.leastOpeningMm)}` : '—',
    type.strong,
  );
  y = fact(
    page,
    words.x,
    y,
    words.width,
    'Bridges, to be kept',
    stencil.bridges.length === 0 ? 'none' : whatShows(stencil.bridges),
    type.strong,
  );
  const givenUp = stencil.islands.filter((i) => i.handled === 'dropped'),
    kept = stencil.islands.filter((i) => i.handled !== 'dropped');
  if (kept.length > 0)
    y = fact(
      page,
      words.x,
      y,
      words.width,
      kept.length === 1 ? 'Island, if it were given up' : 'Islands, if they were given up',
      whatShows(kept),
      type.strong,
    );
  if (givenUp.length > 0) y = fact(page, words.x, y, words.width, 'Islands given up', whatShows(givenUp), type.strong);
  y = fact(
    page,
    words.x,
    y,
    words.width,
    'Loose pieces',
    stencil.loosePieces.length === 0 ? 'none' : `${stencil.loosePieces.length}: number each`,
    type.strong,
  );
  const sheets = cut?.sets.find((set) => set.serves.includes(layer.id))?.sheets.length ?? 1;
  if (cut && (cut.timesToCut > 1 || cut.layers.length > 1))
    y = page.para(words.x, y, words.width, `${sheets > 1 ? `Cut this one ${timesInWords(sheets)}. ` : ''}${cut.why}`, type.small) + 1.5;
  for (const line of cut ? sayUses(cut) : [])
    if (y < frame.bottom - diagramHighMm - 16) y = page.para(words.x, y, words.width, line, type.small) + 0.5;
  y += 1;
  page.para(
    words.x,
    y,
    words.width,
    certificate.holds
      ? 'Proven: the sheet holds together and nothing is too narrow for the knife.'
      : `Not proven: ${plural(certificate.faults.length, 'weak place')}, ringed on the picture.`,
    { ...type.small, weight: 'semibold' },
  );

  y = top + size + 8;
  const left = column(frame, 0, 4);
  y = steps(page, left.x, y, left.width, [
    'Lay the true-size sheets on the material, printed side up. Cut through both.',
    `Inner shapes first, the longest outline last. Turn the sheet, not the wrist.${sharpCorners(layer).length > 0 ? ' Ringed corners: stop just there, or the paper tears on.' : ''}`,
    stencil.bridges.length > 0 ? 'Stop at every bridge (dashed, with its number): it stays.' : 'Grey drops out. White stays.',
    use?.keepForRun !== undefined
      ? `Keep ${use.side === 'window' ? 'what drops out' : 'the sheet'}: run ${use.keepForRun} prints with it.`
      : stencil.loosePieces.length > 0
        ? 'Number the loose pieces and keep them flat, in order.'
        : 'Write run and “mesh side” on the top edge.',
  ]);
  const below = caution(
    page,
    left.x,
    y + 2,
    left.width,
    cautions.find((c) => c.id === 'blades')?.text ?? 'Cut away from the hand; cap the knife.',
  );
  sideDiagram(page, words.x, Math.min(y + 20, frame.bottom - diagramHighMm), words.width, inkName(plan, layer));
  const tiling = tilingOf(setting, drawnExtent(plan.job.image, sheet));
  if (tiling.tiles.length > 1) joinNote(setting, frame, layer, Math.min(below + 4, frame.bottom - 31));
}

/** What the knife runs along: metres, or inches. */
const alongIn = ({ units }: Setting, metres: number, digits?: number): string =>
  units === 'in' ? sayLength(metres * 1000, 'in', 0) : `${digits === undefined ? metres : metres.toFixed(digits)} m`;

/** How many, how large, and how much they show in the print where that is known. */
function whatShows(places: readonly { readonly areaMm2: number; readonly costDeltaE?: number }[]): string {
  const { count, areaMm2, deltaE } = shownBy(places);
  return count > 0 ? `${count}: ${areaMm2.toFixed(0)} mm², ΔE00 ${deltaE.toFixed(1)}` : String(places.length);
}

/** The whole stencil small: pieces numbered, faults ringed, marks where they stand. */
function placingMap(setting: Setting, layer: PlannedLayer, frame: Frame, x: number, y: number, widthMm: number, heightMm: number): number {
  const { page } = frame;
  const { stencil } = layer;
  const { sheet } = stencil;
  const scale = Math.min(widthMm / (sheet.maxX - sheet.minX), heightMm / (sheet.maxY - sheet.minY));
  const w = (sheet.maxX - sheet.minX) * scale,
    h = (sheet.maxY - sheet.minY) * scale;
  const at = { xMm: x - sheet.minX * scale, yMm: y - sheet.minY * scale, scale };
  const point = (px: number, py: number): [number, number] => [at.xMm + px * scale, at.yMm + py * scale];
  page.rect(x, y, w, h, { stroke: '#000000', lineMm: 0.3 });
  page.region(stencil.prints, at, { fill: '#dcdcdc', stroke: '#000000', lineMm: 0.2 }, 0.02);
  for (const mark of registerMarks(setting.plan.job.image, sheet)) {
    const [mx, my] = point(mark.x, mark.y);
    page.line(mx - 2, my, mx + 2, my, 0.15);
    page.line(mx, my - 2, mx, my + 2, 0.15);
  }
  for (const piece of stencil.loosePieces) {
    const [px, py] = point(piece.at[0], piece.at[1]);
    page.circle(px, py, 2.6, { fill: '#ffffff', stroke: '#000000', lineMm: 0.2 });
    page.text(px, py + 1.25, String(piece.number), { size: 7.5, weight: 'bold', align: 'centre' });
  }
  for (const bridge of stencil.bridges) {
    const [bx, by] = point((bridge.from[0] + bridge.to[0]) / 2, (bridge.from[1] + bridge.to[1]) / 2);
    page.circle(bx, by, 1.9, { stroke: '#000000', lineMm: 0.35 });
  }
  for (const fault of stencil.certificate.faults) {
    const [fx, fy] = point(fault.atMm[0], fault.atMm[1]);
    page.circle(fx, fy, 3, { stroke: '#000000', lineMm: 0.6 });
  }
  return h;
}

function joinNote(setting: Setting, frame: Frame, layer: PlannedLayer, y: number): void {
  const extent = drawnExtent(setting.plan.job.image, layer.stencil.sheet);
  const tiling = tilingOf(setting, extent);
  const map = column(frame, 0, 1);
  const words = column(frame, 1, 3);
  tileMap(frame.page, tiling, extent, map.x, y, map.width, 30);
  const joined = seams(tiling).x.length + seams(tiling).y.length;
  frame.page.para(
    words.x,
    y,
    words.width,
    `${plural(tiling.tiles.length, 'sheet')} to join. Cut one of two neighbours at the dashed line, lay ring on ring, tape. ${joined > 1 ? 'Join the rows first. ' : ''}The sheet’s outer edge is not drawn: rule it, with the image in the middle.`,
    type.small,
  );
}

/** From the side: squeegee, mesh, stencil, paper. Which face goes up is seen, not only said. */
function sideDiagram(page: Page, x: number, y: number, widthMm: number, ink: string): void {
  page.text(x, y + 3, 'Seen from the side', type.smallStrong);
  const w = widthMm;
  const mesh = y + 21,
    gap = mesh + 2.2,
    paper = mesh + 12;
  // The blade leans towards the hand; ink lies before it.
  page.line(x + w * 0.42, mesh - 13, x + w * 0.5, mesh - 0.8, 1.6);
  page.fit(x + w * 0.55, mesh - 8, w * 0.45, ink, { size: 8 }, 6);
  for (let i = 0; i <= w / 2.4; i++) page.circle(x + i * 2.4, mesh, 0.45, { fill: '#000000' });
  page.rect(x, gap, w * 0.3, 1.5, { fill: '#ffffff', stroke: '#000000', lineMm: 0.3 });
  page.rect(x + w * 0.66, gap, w * 0.34, 1.5, { fill: '#ffffff', stroke: '#000000', lineMm: 0.3 });
  page.rect(x, paper, w, 1.2, { fill: '#000000' });
  page.text(x + w, mesh - 2, 'mesh', { size: 8, align: 'right' });
  page.text(x, gap + 5.2, 'stencil', { size: 8 });
  page.text(x, paper + 4.8, 'sheet to print', { size: 8 });
  page.para(
    x,
    paper + 8,
    w,
    'The side you read faces the mesh. Seen from above it reads as it prints; on the tipped-up screen it reads backwards.',
    { ...type.small, weight: 'semibold' },
  );
}
