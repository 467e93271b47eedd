import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { parseJob } from '../../core/job/index.ts';
import { problem, type Lead } from '../../core/problem.ts';
import { say } from '../../words/index.ts';
import { atHand, follow, followed, leadsTo, placed } from './leads.ts';
import { sayStep, sayVersion, speak, step, told } from './words.ts';

const job = parseJob({
  schemaVersion: 1,
  title: 'Tide',
  image: { widthMm: 100, heightMm: 80 },
  layers: [{ id: 'foam', name: 'Foam', cut: 'foam', side: 'window', ink: null }],
});
const open = problem('note', 'layer-open', 'layers[#foam].ink', say('job.noLayers'), say('job.chooseInk'));

beforeEach(() => {
  atHand.value = job;
  speak('en');
});
afterEach(() => {
  atHand.value = null;
  speak('en');
  vi.unstubAllGlobals();
});

test('a problem of an answer says where it is in the job on the bench, in the language in use', () => {
  const [shown] = placed([open]);
  expect(told(shown.where!)).toBe('the ink of run 1 (Foam)');
  speak('de');
  expect(told(shown.where!)).toBe('die Farbe von Lauf 1 (Foam)');
  atHand.value = null;
  expect(told(placed([open])[0].where!)).toBe('die Schichten');
});

test('following it asks the station to look, and goes there', () => {
  vi.stubGlobal('location', { hash: '' });
  const looked: Lead[] = [];
  leadsTo('laydown', (lead) => looked.push(lead));
  const lead = placed([open])[0].lead!;
  follow(lead);
  expect(looked).toEqual([{ station: 'laydown', id: 'foam' }]);
  expect(location.hash).toBe('laydown');
  const first = followed.value;
  follow(lead);
  expect(followed.value, 'the same again counts').not.toBe(first);
  vi.unstubAllGlobals();
});

test('a version put aside goes by the title of its job, in any language', () => {
  const version = { name: 'Tide', putAside: true };
  const back = step('version', version.name, version.putAside);
  expect(sayVersion({ name: 'before lunch' })).toBe('before lunch');
  expect(sayVersion(version)).toBe('Tide, before another job was opened');
  expect(sayStep(back)).toBe('going back to “Tide, before another job was opened”');
  speak('de');
  expect(sayVersion(version)).toBe('Tide, bevor eine andere Arbeit geöffnet wurde');
  expect(sayStep(back)).toBe('zurück zu „Tide, bevor eine andere Arbeit geöffnet wurde“');
});
