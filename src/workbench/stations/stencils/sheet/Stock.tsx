import { useId } from 'preact/hooks';
import type { JobMaterial } from '../../../../core/job/index.ts';
import { nameSize, paperSizes } from '../../../../core/units/index.ts';
import { saySize } from '../../../ui/fields/units.ts';
import { download } from '../../../store/keep/files.ts';
import type { ShownPlan } from '../../../engine/protocol.ts';
import { LengthField } from '../../../ui/fields/LengthField.tsx';
import { ProblemList } from '../../../ui/ProblemList.tsx';
import { regionPath } from '../../../ui/region-path.ts';
import { faultsOf } from '../../../engine/faults.ts';
import { language, step, words } from '../../../store/words.ts';
import { materialList, withMaterial } from '../edits.ts';
import type { PartProps } from '../parts.ts';
import { bridgeAt, chosenLayer } from '../state.ts';

type StockSize = NonNullable<JobMaterial['stock']>;
type LaidSheet = ShownPlan['stock'][number];

/** Sheets that materials are sold in, either family of sizes; a studio's own is typed in. */
const soldAs = paperSizes.filter((s) =>
  ['a4', 'a3', 'a2', 'a1', 'a0', 'b2', 'b1', 'in-11x14', 'in-18x24', 'in-19x25', 'in-22x30'].includes(s.id),
);
const types = {
  svg: 'image/svg+xml',
  dxf: 'application/dxf',
  pdf: 'application/pdf',
  a4: 'application/pdf',
  letter: 'application/pdf',
} as const;

/** The sheets this stencil's material comes in, and how the stencils lie on them side by side; what a machine's cut takes away. */
export function Stock({ bench, planned }: PartProps) {
  const w = words().stencils;
  const job = bench.job.value!,
    plan = bench.plan.value!;
  const { units } = job;
  const list = materialList(job);
  const materialId = plan.cuts.find((c) => c.id === planned.cutId)?.materialId;
  const material = list.find((m) => m.id === materialId) ?? list[0];
  const { stock } = material;
  const edit = (change: Partial<JobMaterial>): void =>
    bench.edit(step('stock', material.name), (j) => withMaterial(j, material.id, change));
  const size = (change: Partial<StockSize>): void =>
    edit({ stock: { grainMatters: false, marginMm: 0, widthMm: 700, heightMm: 1000, ...stock, ...change } });
  const sold = stock && nameSize(stock.widthMm, stock.heightMm, 0.5);
  const sheets = plan.stock.filter((s) => s.materialId === material.id);
  const problems = plan.problems.filter((p) => p.code.startsWith('stock-') && p.lead?.id === material.id);
  const others = list.filter((m) => m.id !== material.id && m.stock);
  const length = (label: string, valueMm: number, minMm: number, maxMm: number, onSet: (mm: number) => void) => (
    <label class="num">
      <span>{label}</span>
      <LengthField label={label} valueMm={valueMm} minMm={minMm} maxMm={maxMm} units={units} onSet={onSet} />
    </label>
  );
  return (
    <section class="beside" aria-labelledby="stock">
      <h2 id="stock">{w.stock}</h2>
      <p class="outcome">
        {stock
          ? sheets.length > 0
            ? w.stockNeeds(
                sheets.reduce((sum, s) => sum + s.times, 0),
                material.name,
              )
            : w.stockNone
          : w.stockUnknown(material.name)}
      </p>
      <div class="nums">
        <label class="num">
          <span>{w.soldAs}</span>
          <select
            class="choice"
            aria-label={w.soldAs}
            value={stock ? (sold && soldAs.includes(sold) ? sold.id : 'own') : ''}
            onChange={(e) => {
              const chosen = soldAs.find((s) => s.id === e.currentTarget.value);
              if (e.currentTarget.value === '') edit({ stock: undefined });
              else size(chosen ? { widthMm: chosen.widthMm, heightMm: chosen.heightMm } : {});
            }}
          >
            <option value="">{w.soldUnknown}</option>
            {soldAs.map((s) => (
              <option key={s.id} value={s.id}>
                {s.family === 'inch' ? s.name : `${s.name}, ${saySize(s.widthMm, s.heightMm, units)}`}
              </option>
            ))}
            <option value="own">{w.soldOwn}</option>
          </select>
        </label>
        {stock && length(w.stockWidth, stock.widthMm, 5, 5000, (widthMm) => size({ widthMm }))}
        {stock && length(w.stockHeight, stock.heightMm, 5, 5000, (heightMm) => size({ heightMm }))}
        {stock && length(w.stockMargin, stock.marginMm, 0, 100, (marginMm) => size({ marginMm }))}
        {length(w.kerf, material.kerfMm ?? 0, 0, 5, (kerfMm) => edit({ kerfMm: kerfMm === 0 ? undefined : kerfMm }))}
        {stock && (
          <label class="tick">
            <input type="checkbox" checked={stock.grainMatters} onChange={(e) => size({ grainMatters: e.currentTarget.checked })} />
            <span>{w.grain}</span>
          </label>
        )}
      </div>
      <details class="fold">
        <summary>{words().sheet.why}</summary>
        <p>{w.stockWhy}</p>
      </details>
      {problems.length > 0 && <ProblemList problems={problems} />}
      {sheets.map((sheet) => (
        <LaidStock key={sheet.number} bench={bench} sheet={sheet} chosen={planned.id} />
      ))}
      {others.length > 0 && (
        <>
          <h3>{w.stockOthers}</h3>
          <ul class="stock-others">
            {others.map((m) => (
              <li key={m.id}>
                <b>{m.name}</b> <span>{saySize(m.stock!.widthMm, m.stock!.heightMm, units)}</span>{' '}
                <span>{w.stockCount(plan.stock.filter((s) => s.materialId === m.id).reduce((sum, s) => sum + s.times, 0))}</span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** One sheet of stock as it lies on the table, its stencils numbered; touch one to see it. */
function LaidStock({ bench, sheet, chosen }: { readonly bench: PartProps['bench']; readonly sheet: LaidSheet; readonly chosen: string }) {
  const w = words().stencils;
  const title = useId();
  const { layers, job } = bench.plan.value!;
  const nameOf = (ids: readonly string[]): string =>
    layers
      .filter((l) => ids.includes(l.id))
      .map((l) => `${l.run} ${l.name}`)
      .join(' + ');
  const save = async (format: keyof typeof types): Promise<void> => {
    bench.refuse(null);
    try {
      await bench.upToDate();
      const file = await bench.ask('stockFile', { number: sheet.number, format, language: language.value });
      download(file.bytes, file.path, types[format]);
      bench.announce(w.saved(file.path));
    } catch (error) {
      bench.refuse(faultsOf(error));
    }
  };
  const mark = Math.min(sheet.widthMm, sheet.heightMm) / 22;
  return (
    <figure class="laid-stock" aria-labelledby={title}>
      <svg viewBox={`0 0 ${sheet.widthMm} ${sheet.heightMm}`} role="img" aria-label={w.stockPicture(sheet.number, sheet.placed.length)}>
        <rect class="stock-sheet" width={sheet.widthMm} height={sheet.heightMm} />
        {sheet.placed.map((p) => {
          const layer = layers.find((l) => l.id === p.layerId);
          if (!layer) return null;
          const { sheet: box, prints } = layer.stencil;
          return (
            <g key={p.number} class={`stock-part${p.layers.includes(chosen) ? ' stock-chosen' : ''}`}>
              <rect x={p.xMm} y={p.yMm} width={p.widthMm} height={p.heightMm} />
              <path
                fill-rule="evenodd"
                d={regionPath(prints)}
                transform={
                  p.turned
                    ? `translate(${p.xMm + box.maxY} ${p.yMm - box.minX}) rotate(90)`
                    : `translate(${p.xMm - box.minX} ${p.yMm - box.minY})`
                }
              />
              <text x={p.xMm + mark * 0.5} y={p.yMm + mark * 1.3} style={{ fontSize: `${mark * 1.3}px` }}>
                {p.number}
              </text>
            </g>
          );
        })}
      </svg>
      <figcaption>
        <p id={title}>
          <b>{w.stockSheet(sheet.number, saySize(sheet.widthMm, sheet.heightMm, job.units))}</b> ·{' '}
          {w.stockLeft(Math.round(100 * (1 - sheet.usedShare)))}
          {sheet.times > 1 && (
            <>
              {' '}
              · <b>{w.times(sheet.times)}</b>
            </>
          )}
        </p>
        <ol class="bridge-list">
          {sheet.placed.map((p) => (
            <li key={p.number}>
              <button
                type="button"
                class="bridge-tag"
                aria-pressed={p.layers.includes(chosen)}
                onClick={() => {
                  chosenLayer.value = p.layerId;
                  bridgeAt.value = null;
                }}
              >
                <b>{p.number}</b>
                <span>{nameOf(p.layers)}</span>
                {p.turned && <small>{w.stockTurned}</small>}
              </button>
            </li>
          ))}
        </ol>
        <div class="row">
          <span>{w.stockFile}</span>
          {(['svg', 'dxf', 'pdf'] as const).map((format) => (
            <button
              key={format}
              type="button"
              class="button button-line"
              aria-label={w.stockFileOf(sheet.number, format.toUpperCase())}
              onClick={() => void save(format)}
            >
              {format.toUpperCase()}
            </button>
          ))}
        </div>
        <div class="row">
          <span>{w.stockParts}</span>
          {(['a4', 'letter'] as const).map((paper) => (
            <button
              key={paper}
              type="button"
              class="button button-line"
              aria-label={w.stockPartsOf(sheet.number, w.stockPaper[paper])}
              onClick={() => void save(paper)}
            >
              {w.stockPaper[paper]}
            </button>
          ))}
        </div>
      </figcaption>
    </figure>
  );
}
