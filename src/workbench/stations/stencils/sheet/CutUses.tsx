import type { CutUse } from '../../../../core/plan/index.ts';
import { words } from '../../../store/words.ts';

/** A cross: spent. A drop: to be washed. A tray with a sheet on it: kept flat. Each is said in words too. */
const signs = {
  spent: 'M5 5L19 19M19 5L5 19',
  wash: 'M12 3C8.5 8 6 11.5 6 15a6 6 0 0 0 12 0C18 11.5 15.5 8 12 3Z',
  keep: 'M3 13V20H21V13M7 15H17',
} as const;

/** So many of a run's sheets are drawn; the words name them all. */
const mostDrawn = 3;

interface Props {
  readonly uses: readonly CutUse[];
  readonly nameOf: (layerId: string) => string;
  /** Id of the picture of a side, drawn above. */
  readonly picture: (side: CutUse['side']) => string;
  readonly image: { readonly widthMm: number; readonly heightMm: number };
}

/** Run by run which sheet of the cut is laid in, and what becomes of it. */
export function CutUses({ uses, nameOf, picture, image }: Props) {
  const w = words().stencils;
  if (uses.length === 0) return null;
  const sign = (kind: keyof typeof signs) => (
    <svg class="use-sign" viewBox="0 0 24 24" aria-hidden="true">
      <path d={signs[kind]} />
    </svg>
  );
  return (
    <>
      <h3>{w.uses}</h3>
      <ol class="cut-uses">
        {uses.map((use) => (
          <li key={use.layerId}>
            <span class="use-sheets" aria-hidden="true">
              {use.sheets.slice(0, mostDrawn).map((sheet) => (
                <span key={sheet} class="use-sheet">
                  <svg viewBox={`0 0 ${image.widthMm} ${image.heightMm}`}>
                    <use href={`#${picture(use.side)}`} />
                  </svg>
                  <b>{sheet}</b>
                </span>
              ))}
              {use.sheets.length > mostDrawn && '…'}
            </span>
            <span class="use-words">
              <b>{`${use.run} ${nameOf(use.layerId)}`}</b>
              <span>{w.sheetOf[use.side](w.sheetNumbers(use.sheets))}</span>
              <span class="use-fate">
                {sign(use.after === 'spent' ? 'spent' : 'wash')}
                {use.after === 'wash' ? w.fates.wash(use.againInRun ?? use.run) : w.fates[use.after]}
              </span>
              {use.keepForRun !== undefined && (
                <span class="use-fate">
                  {sign('keep')}
                  {w.keepFlat[use.side](use.keepForRun)}
                </span>
              )}
            </span>
          </li>
        ))}
      </ol>
    </>
  );
}
