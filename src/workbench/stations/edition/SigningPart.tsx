import { sayFault, type NumberedSheet } from '../../../core/edition/index.ts';
import { Why } from '../../ui/fields/Why.tsx';
import { told, words } from '../../store/words.ts';
import type { PartProps } from '../press/setup/part.ts';
import { setApart, type Apart } from './edits.ts';

/** After counting: what the pencil writes on which sheet, and the life of every sheet. */
export function SigningPart({ bench, plan }: PartProps) {
  const w = words().edition;
  const { numbered, counted } = plan.edition;
  if (!numbered || !counted) {
    return (
      <div class="part-empty">
        <p>{w.nothingCounted}</p>
        <a class="button button-strong" href="#pulling">
          {w.toPress}
        </a>
      </div>
    );
  }
  const pulled = counted.runs.reduce((sum, run) => sum + run.sheets.length, 0);
  const of = plan.edition.pullsOfRun.reduce((sum, pulls, run) => sum + pulls - plan.edition.setUpOfRun[run], 0);
  const apart = bench.job.value!.edition.setApart;
  const paperName = (id: string): string => plan.job.papers.find((p) => p.id === id)?.name ?? id;
  const notesOf = (id: string): readonly string[] =>
    (counted.sheets.find((s) => s.sheet === id)?.notes ?? []).map((n) => told(sayFault(n)));
  const done = (sheet: NumberedSheet): boolean => plan.layers.every((l) => sheet.sheet.runs.includes(l.id));
  const kindOf = (one: NumberedSheet): string =>
    one.kind === 'rejected' && !done(one) && one.sheet.faults.length === 0 ? w.notFinished : w.kinds[one.kind];
  const choices: readonly (readonly [Apart | '', string])[] = [
    ['', w.asPulled],
    ['bat', w.asBat],
    ['state', w.asState],
    ['colour-trial', w.asTrial],
    ['set-up', w.asSetUp],
    ['cancellation', w.asCancellation],
  ];
  return (
    <div class="signing">
      {numbered.sizes.map((size) => {
        const proofs = [
          ['A/P', size.artists],
          ['B.A.T.', size.bat],
          ['P/P', size.printers],
          ['H.C.', size.horsCommerce],
        ] as const;
        const said = proofs.filter(([, n]) => n > 0).map(([name, n]) => `${n} ${name}`);
        return (
          <p key={size.paper} class="size">
            {size.paper !== null && <b>{w.sizesOf(paperName(size.paper))}</b>}
            {w.sizes(size.edition, size.spare > 0 ? [...said, w.spare(size.spare)] : said)}
          </p>
        );
      })}
      <p>
        {pulled < of && w.countedSoFar(pulled, of)}
        <Why of={w.pencil}>{w.pencilWhy}</Why>
      </p>
      <h2>{w.register}</h2>
      <div class="sheet-table">
        <table>
          <thead>
            <tr>
              <th>{w.sheet}</th>
              <th>{w.pencil}</th>
              <th>{w.paper}</th>
              <th>{w.runs}</th>
              <th>{w.faults}</th>
              <th>{w.setApart}</th>
            </tr>
          </thead>
          <tbody>
            {numbered.sheets.map((one) => (
              <tr key={one.sheet.id} data-sheet={one.sheet.id}>
                <td>
                  <b>{one.sheet.id}</b>
                </td>
                <td class="pencil">{one.text ? <b>{told(one.text)}</b> : kindOf(one)}</td>
                <td>{paperName(one.sheet.paper)}</td>
                <td>
                  <span
                    class="run-dots"
                    role="img"
                    aria-label={
                      plan.layers
                        .filter((l) => one.sheet.runs.includes(l.id))
                        .map((l) => l.name)
                        .join(', ') || w.notFinished
                    }
                  >
                    {plan.layers.map((l) => (
                      <i
                        key={l.id}
                        class={one.sheet.runs.includes(l.id) ? 'dot dot-done' : 'dot'}
                        style={one.sheet.runs.includes(l.id) ? { background: l.swatch?.srgb ?? '#000' } : {}}
                      />
                    ))}
                  </span>
                </td>
                <td>{[...one.sheet.faults.map((f) => told(sayFault(f))), ...notesOf(one.sheet.id)].join('; ')}</td>
                <td>
                  <select
                    class="choice"
                    aria-label={w.setApartOf(one.sheet.id)}
                    value={apart[one.sheet.id] ?? ''}
                    onChange={(e) =>
                      setApart(
                        bench,
                        one.sheet.id,
                        (choices.find(([id]) => id === e.currentTarget.value && id !== '')?.[0] as Apart) ?? null,
                      )
                    }
                  >
                    {choices.map(([id, name]) => (
                      <option key={id} value={id}>
                        {name}
                      </option>
                    ))}
                  </select>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
