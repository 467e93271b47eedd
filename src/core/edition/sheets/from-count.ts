import type { CountState } from './count-log.ts';
import { faultOf } from './faults.ts';
import type { Sheet } from './numbering.ts';

/**
 * The sheets' lives out of the count at the press: what was pulled and spoiled, in the order of the laydown. Sheets that
 * were named but never pulled are kept, with no run, so that none is lost from the list.
 */
export function sheetsFromCount(
  state: CountState,
  named: readonly { readonly id: string; readonly paper: string; readonly kept?: Sheet['kept'] }[],
  runs: readonly string[],
): Sheet[] {
  const counted = new Map(state.sheets.map((sheet) => [sheet.sheet, sheet]));
  const known = new Set(named.map((one) => one.id));
  const strays = state.sheets.filter((sheet) => !known.has(sheet.sheet)).map((sheet) => ({ id: sheet.sheet, paper: 'unknown' }));
  return [...named, ...strays].map((one): Sheet => {
    const life = counted.get(one.id);
    return {
      ...one,
      runs: runs.filter((run) => life?.runs.includes(run)),
      faults: (life?.faults ?? []).map((one) => ({ run: one.run, ...faultOf(one), rejects: true })),
    };
  });
}
