import type { JobScreen } from '../../../../../core/job/index.ts';
import { calledPerInch, type MeshAdvice, type MeshSource } from '../../../../../core/press/index.ts';
import { mmPerInch, sayFilm, sayNumber } from '../../../../ui/fields/units.ts';
import { CountField } from '../../../../ui/fields/CountField.tsx';
import { Why } from '../../../../ui/fields/Why.tsx';
import { told, words } from '../../../../store/words.ts';
import { setScreen } from '../edits.ts';
import type { PartProps } from '../part.ts';
import { Weave } from './Weave.tsx';

const cmPerInch = mmPerInch / 10;

/** Meshes to choose from, drawn side by side at one scale, and the figures of the one on this screen. */
export function MeshChoice({ bench, plan, screen }: PartProps & { readonly screen: JobScreen }) {
  const w = words().press;
  const { deposit, meshes } = plan.press;
  const { mesh } = deposit;
  const { units } = plan.job;
  const count = (threads: number): string => sayNumber(threads, 1, false);
  const film = (microns: number): string => sayFilm(microns, units, units === 'mm' ? 0 : 1);
  const chosen = (row: MeshAdvice): boolean => row.mesh.perCm === screen.mesh.perCm && row.mesh.threadMicrons === screen.mesh.threadMicrons;
  const percent = `${deposit.transferShare.map((s) => Math.round(s * 100)).join('–')} %`;
  const from = (source: MeshSource): string => ({ given: w.given, table: w.table, formula: w.formula })[source];
  const figure = (change: Partial<JobScreen['mesh']>): void => setScreen(bench, 'mesh-figures', { mesh: { ...screen.mesh, ...change } });
  return (
    <section class="mesh-choice" aria-label={w.mesh}>
      <div class="mesh-head">
        <h2>
          {w.mesh}: {(units === 'mm' ? w.meshPer : w.meshPerInch)(count(mesh.perCm), sayNumber(calledPerInch(mesh), 0, true))}
        </h2>
        <p>
          <b>
            {w.film}: {film(deposit.wetMicrons)}
          </b>{' '}
          {w.between(film(deposit.wetRange[0]), film(deposit.wetRange[1]))}
        </p>
        <Why of={w.film}>{w.meshWhy(percent, w.between(film(deposit.wetRange[0]), film(deposit.wetRange[1])))}</Why>
      </div>
      <fieldset class="meshes">
        <legend>{w.meshTable}</legend>
        {meshes.map((row) => (
          <label key={row.mesh.id} class="mesh" title={row.reasons.map(told).join(' ')}>
            <input
              type="radio"
              name="mesh"
              checked={chosen(row)}
              aria-label={[
                `${w.meshSpoken(count(row.mesh.perCm), count(row.mesh.perInch), film(row.mesh.threadMicrons), film(row.wetMicrons))}.`,
                ...row.reasons.map(told),
              ].join(' ')}
              onChange={() => setScreen(bench, 'mesh', { mesh: { perCm: row.mesh.perCm, threadMicrons: row.mesh.threadMicrons } })}
            />
            <Weave perCm={row.mesh.perCm} threadMicrons={row.mesh.threadMicrons} />
            <b>{units === 'mm' ? w.perCm(count(row.mesh.perCm)) : w.perInch(count(row.mesh.perInch))}</b>
            <span>{w.thread(film(row.mesh.threadMicrons))}</span>
            <span>{w.wet(film(row.wetMicrons))}</span>
            <span class="film-bar" style={{ height: `${row.wetMicrons / 4}px` }} />
          </label>
        ))}
      </fieldset>
      <details class="own-figures">
        <summary>{w.ownFigures}</summary>
        <div class="fields">
          {units === 'mm' ? (
            <CountField label={w.threadsPerCm} value={mesh.perCm} min={1} max={300} digits={1} onSet={(perCm) => figure({ perCm })} />
          ) : (
            <CountField
              label={w.threadsPerInch}
              value={mesh.perInch}
              min={3}
              max={760}
              onSet={(perInch) => figure({ perCm: perInch / cmPerInch })}
            />
          )}
          <CountField
            label={`${w.threadMicrons}, µm`}
            value={mesh.threadMicrons}
            min={1}
            max={499}
            digits={1}
            onSet={(threadMicrons) => figure({ threadMicrons })}
          />
          <CountField
            label={`${w.opening}, µm`}
            value={mesh.openingMicrons}
            min={1}
            max={2000}
            digits={1}
            onSet={(openingMicrons) => figure({ openingMicrons })}
          />
          <CountField
            label={`${w.openArea}, %`}
            value={mesh.openPercent}
            min={1}
            max={99}
            digits={1}
            onSet={(openPercent) => figure({ openPercent })}
          />
          <CountField
            label={`${w.thickness}, µm`}
            value={mesh.thicknessMicrons}
            min={1}
            max={1000}
            digits={1}
            onSet={(thicknessMicrons) => figure({ thicknessMicrons })}
          />
          <CountField
            label={`${w.volume}, cm³/m²`}
            value={mesh.theoreticalCm3PerM2}
            min={0.5}
            max={1000}
            digits={1}
            onSet={(theoreticalCm3PerM2) => figure({ theoreticalCm3PerM2 })}
          />
        </div>
        <p class="field-note">
          {(
            [
              [w.opening, mesh.from.openingMicrons],
              [w.openArea, mesh.from.openPercent],
              [w.thickness, mesh.from.thicknessMicrons],
              [w.volume, mesh.from.theoreticalCm3PerM2],
            ] as const
          )
            .map(([name, source]) => `${name}: ${from(source)}`)
            .join(' · ')}
        </p>
      </details>
    </section>
  );
}
