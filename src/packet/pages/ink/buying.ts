import { buyingHeads, buyingList, type BuyingGroup } from '../../../core/plan/index.ts';
import { textWidthMm } from '../../pdf/type.ts';
import { startPage, type, type Frame, type Setting } from './setting.ts';

const usualRowMm = 7.4,
  leastRowMm = 6.6;
const headMm = 7;
const gapMm = 8;

/** All that is used up, in the sizes it is bought in, two columns: a box to tick, how much, and what for. */
export function buyingPages(setting: Setting): void {
  const columns = columnsOf(setting);
  if (columns.length === 0) return;
  // Under what is to be weighed up first, where the page has the room.
  const { under } = setting;
  const rowMm = [usualRowMm, leastRowMm].find((row) => under && under.y + highest(columns, row) + 11 <= under.frame.bottom);
  if (under && rowMm !== undefined) {
    const { page, left, right, width } = under.frame;
    page.text(left, under.y + 6, setting.say('buying.title'), { ...type.large, size: 18 });
    page.text(right, under.y + 6, setting.say('buying.haveItFirst'), { ...type.body, align: 'right' });
    page.rect(left, under.y + 8.5, width, 0.6, { fill: '#000000' });
    draw(setting, under.frame, under.y + 12, columns, rowMm);
    return;
  }
  const frame = begin(setting, false);
  draw(setting, frame, frame.top, columns, usualRowMm);
}

const begin = (setting: Setting, more: boolean): Frame =>
  startPage(setting, { title: setting.say('buying.title'), side: setting.say(more ? 'packet.continued' : 'buying.haveItFirst'), runs: [] });

type Column = readonly BuyingGroup[];

const highOf = (group: BuyingGroup, rowMm: number): number => headMm + group.lines.length * rowMm + 3;
const highest = (columns: readonly Column[], rowMm = usualRowMm): number =>
  Math.max(...columns.map((one) => one.reduce((sum, group) => sum + highOf(group, rowMm), 0)));

/** Groups stay whole; the columns as even as that goes. */
function columnsOf(setting: Setting): Column[] {
  const groups = buyingList(setting.plan);
  if (groups.length < 2) return groups.length === 0 ? [] : [groups];
  // The first group stands first; every way to share out the others.
  const ways = Array.from({ length: 2 ** (groups.length - 1) - 1 }, (_, way) => {
    const left = groups.filter((_group, i) => i === 0 || (way >> (i - 1)) % 2 === 1);
    return [left, groups.filter((group) => !left.includes(group))];
  });
  return ways.sort((a, b) => highest(a) - highest(b))[0];
}

function draw(setting: Setting, first: Frame, top: number, columns: readonly Column[], rowMm: number): void {
  const wide = (first.width - gapMm) / 2;
  let frame = first;
  columns.forEach((groups, i) => {
    let y = top;
    frame = first;
    for (const group of groups) {
      const x = frame.left + i * (wide + gapMm);
      if (y + headMm + rowMm > frame.bottom) y = (frame = begin(setting, true)).top;
      frame.page.text(x, y + 4, setting.tell(buyingHeads[group.kind]), type.head);
      y += headMm;
      for (const line of group.lines) {
        if (y + rowMm > frame.bottom) y = (frame = begin(setting, true)).top;
        const { page } = frame;
        page.line(x, y, x + wide, y, 0.15);
        page.rect(x, y + 1.6, 4.2, 4.2, { stroke: '#000000', lineMm: 0.3 });
        const says = setting.tell(line.amount);
        const amount = Math.min(wide * 0.5, textWidthMm(page.faces, says, { ...type.strong, size: 10 }));
        page.fit(x + 7, y + 3.7, wide - 9 - amount, setting.tell(line.what), { ...type.strong, size: 10 }, 6);
        page.fit(x + wide, y + 3.7, amount, says, { ...type.strong, size: 10, align: 'right' }, 6.5);
        if (line.note) page.fit(x + 7, y + 6.3, wide - 7, setting.tell(line.note), { size: 7.5 }, 6);
        y += rowMm;
      }
      y += 3;
    }
  });
}
