import type { JobMaterial } from '../../../../core/job/index.ts';
import { bareLength, sayLength, sayNumber } from '../../../ui/fields/units.ts';
import { LengthBox } from '../../../ui/fields/LengthField.tsx';
import { LengthField } from '../../../ui/fields/LengthField.tsx';
import { NumberField } from '../../../ui/fields/NumberField.tsx';
import { step, words } from '../../../store/words.ts';
import { freshId } from '../../forms/edits.ts';
import { materialList, usualPrints, withMaterial, withSheet } from '../edits.ts';
import type { PartProps } from '../parts.ts';

/** What this cut is cut from, what follows from it, and the studio's own list. */
export function MaterialChoice({ bench, planned }: PartProps) {
  const w = words().stencils;
  const job = bench.job.value!;
  const { units } = job;
  const list = materialList(job);
  const cut = job.cuts.find((c) => c.id === planned.cutId);
  const chosen = list.find((m) => m.id === cut?.material) ?? list[0];
  const prints = chosen.prints ?? usualPrints(chosen.id);
  const { ridge } = planned;
  const margin = 2 * Math.max(5, job.stencilMarginMm);
  const usual = [job.image.widthMm + margin, job.image.heightMm + margin] as const;
  return (
    <section class="beside" aria-labelledby="material">
      <h2 id="material">{w.material}</h2>
      <select
        class="choice"
        aria-label={w.materialOf(cut?.name ?? '')}
        value={chosen.id}
        onChange={(e) => {
          const id = e.currentTarget.value;
          bench.edit(step('cutMaterial', cut?.name ?? '', list.find((m) => m.id === id)?.name ?? id), (j) => ({
            ...j,
            cuts: j.cuts.map((c) => (c.id === planned.cutId ? { ...c, material: id } : c)),
          }));
        }}
      >
        {list.map((m) => (
          <option key={m.id} value={m.id}>{`${m.name}, ${sayLength(m.thicknessMm, units)}`}</option>
        ))}
      </select>
      <div class="nums">
        {([0, 1] as const).map((axis) => (
          <LengthBox
            key={axis}
            label={axis === 0 ? w.sheetWidth : w.sheetHeight}
            mm={cut?.sheetMm?.[axis] ?? null}
            units={units}
            minMm={[job.image.widthMm, job.image.heightMm][axis] + 10}
            maxMm={5000}
            optional
            hint={bareLength(usual[axis], units)}
            onSet={(mm) => {
              const sheet = [...(cut?.sheetMm ?? usual)] as [number, number];
              if (mm !== null) sheet[axis] = mm;
              bench.edit(step('stencilSheet', cut?.name ?? ''), (j) => withSheet(j, planned.cutId, mm === null ? null : sheet));
            }}
          />
        ))}
      </div>
      <p>
        {w.lasts(prints[0], prints[1], chosen.washable)}{' '}
        {w.ridge(sayNumber(ridge.timesTheFilm, 1, false), sayLength(ridge.withinMm[0], units), sayLength(ridge.withinMm[1], units))}
      </p>
      <details class="fold">
        <summary>{words().sheet.why}</summary>
        <p>{w.ridgeWhy}</p>
      </details>
      <details class="fold">
        <summary>{w.materialList}</summary>
        <div class="materials">
          <p class="num-note">{w.materialWhy}</p>
          {list.map((m) => (
            <MaterialRow key={m.id} bench={bench} material={m} />
          ))}
          <button
            type="button"
            class="button button-line"
            onClick={() =>
              bench.edit(step('addMaterial'), (j) => ({
                ...j,
                materials: [
                  ...list,
                  {
                    id: freshId(list, 'material'),
                    name: w.newMaterial,
                    thicknessMm: 0.1,
                    leastBridgeMm: 2,
                    leastOpeningMm: 1,
                    prints: [10, 20],
                    washable: false,
                  },
                ],
              }))
            }
          >
            {w.addMaterial}
          </button>
        </div>
      </details>
    </section>
  );
}

function MaterialRow({ bench, material }: { readonly bench: PartProps['bench']; readonly material: JobMaterial }) {
  const w = words().stencils;
  const { units } = bench.job.value!;
  const set = (change: Partial<JobMaterial>): void =>
    bench.edit(step('material', material.name), (j) => withMaterial(j, material.id, change));
  const prints = material.prints ?? [2, 6];
  const label = (what: string): string => `${material.name}: ${what}`;
  const length = (what: string, valueMm: number, mostMm: number, onSet: (mm: number) => void) => (
    <label class="num">
      <span>{what}</span>
      <LengthField label={label(what)} valueMm={valueMm} minMm={0.01} maxMm={mostMm} units={units} onSet={onSet} />
    </label>
  );
  const pulls = (what: string, value: number, onSet: (n: number) => void) => (
    <label class="num">
      <span>{what}</span>
      <NumberField label={label(what)} value={value} min={0} max={100000} unit="" onSet={(n) => onSet(Math.round(n))} />
    </label>
  );
  return (
    <div class="material-row">
      <input
        class="text"
        aria-label={label(w.materialName)}
        value={material.name}
        maxLength={200}
        onChange={(e) => {
          const name = e.currentTarget.value.trim();
          if (name) set({ name });
          else e.currentTarget.value = material.name;
        }}
      />
      <div class="nums">
        {length(w.thickness, material.thicknessMm, 10, (thicknessMm) => set({ thicknessMm }))}
        {length(w.leastBridge, material.leastBridgeMm, 50, (leastBridgeMm) => set({ leastBridgeMm }))}
        {length(w.leastOpening, material.leastOpeningMm, 50, (leastOpeningMm) => set({ leastOpeningMm }))}
        {pulls(w.printsFrom, prints[0], (n) => set({ prints: [n, Math.max(n, prints[1])] }))}
        {pulls(w.printsTo, prints[1], (n) => set({ prints: [Math.min(n, prints[0]), n] }))}
        <label class="tick">
          <input
            type="checkbox"
            checked={material.washable}
            aria-label={label(w.washable)}
            onChange={(e) => set({ washable: e.currentTarget.checked })}
          />
          <span>{w.washable}</span>
        </label>
      </div>
    </div>
  );
}
