import type { Plan } from '../../../../core/plan/index.ts';
import { shiftCodes, type Codes } from '../../../../core/print/index.ts';
import { fail } from '../../../../core/problem.ts';
import { say } from '../../../../words/one-language.ts';
import type { Work } from '../room.ts';

const kept = new WeakMap<Plan['register'], Map<Plan['codes'], Map<number, Codes>>>();
/** The last few sheets looked at; each is as large as the raster. */
const mostKept = 3;

export function codesOfSheet(plan: Plan, sheet: number): Codes {
  const { sheets: all } = plan.register.draws;
  const drawn = all[sheet];
  if (!drawn)
    fail('no-such-sheet', 'register', say('engine.sheetNotDrawn', { sheet }), say('engine.chooseSheet', { last: all.length - 1 }));
  let ofRegister = kept.get(plan.register);
  if (!ofRegister) kept.set(plan.register, (ofRegister = new Map()));
  let sheets = ofRegister.get(plan.codes);
  if (!sheets) ofRegister.set(plan.codes, (sheets = new Map()));
  let codes = sheets.get(sheet);
  if (!codes) {
    codes = shiftCodes(
      plan.codes,
      plan.layers.map((layer, i) => ({ bit: layer.bit, ...drawn.layers[i] })),
    );
    if (sheets.size >= mostKept) sheets.delete(sheets.keys().next().value!);
    sheets.set(sheet, codes);
  }
  return codes;
}

export const sheetCodesAnswer: Work<'sheetCodes'> = async ({ sheet }, room) => {
  if (!room.last) fail('no-plan', say('where.workbench'), say('engine.notPlanned'), say('engine.waitAndTry'));
  return { answer: codesOfSheet(room.last.plan, sheet), transfer: [] };
};
