import { useSignal } from '@preact/signals';
import { registerTestSheet, testScaleFor, type TestPlace } from '../../../../../core/press/index.ts';
import type { Job } from '../../../../../core/job/index.ts';
import { sayLength } from '../../../../ui/fields/units.ts';
import { told, words } from '../../../../store/words.ts';
import { LineField } from '../screen/LineField.tsx';
import type { PartProps } from '../part.ts';
import { setTestLine, takeBackTested, useTested, type TestSheetsOfJob } from './test-edits.ts';
import { TestResult } from './TestResult.tsx';

/** Sheets that were read are kept in the job; this many are laid out to begin with. */
const usualSheets = 10;

/** The printed register test, read back: sheet by sheet, the lines of the scales that meet. */
export function TestSheets({ bench, plan }: PartProps) {
  const w = words().press;
  const at = useSignal(1);
  const asked = useSignal(usualSheets);
  const job = bench.job.value!;
  const sheets = job.register.testSheets ?? emptyFor(job);
  if (!sheets) return <p class="field-note">{w.testSmall(sayLength(78, job.units))}</p>;
  const scale = { readsMm: sheets.readsMm };
  const all = registerTestSheet(sheets.imageMm, scale);
  const printed = registerTestSheet(sheets.imageMm, { ...scale, corners: false }).places;
  // Sheets of before had four places.
  const places = sheets.readings.some((one) => printed.every((p) => p.id !== one.place)) ? all.places : printed;
  const { rangeMm } = all;
  const done = (sheet: number): boolean =>
    places.every((place) => {
      const read = readingOf(sheets, sheet, place);
      return read?.across !== undefined && read.down !== undefined;
    });
  const count = Math.max(asked.value, ...sheets.readings.map((one) => one.sheet));
  const lines = Math.round(rangeMm / sheets.readsMm);
  return (
    <section class="test-sheets" aria-label={w.testHead}>
      <h3>{w.testHead}</h3>
      <p>{w.testHow(sayLength(sheets.readsMm, job.units, job.units === 'mm' ? 1 : 3))}</p>
      <div class="test-two">
        <div>
          <fieldset class="test-choice">
            <legend class="unseen">{w.testSheetChoice}</legend>
            {Array.from({ length: count }, (_, i) => i + 1).map((sheet) => (
              <label key={sheet} class="sheet-kind" data-done={done(sheet)}>
                <input
                  type="radio"
                  name="test-sheet"
                  checked={at.value === sheet}
                  aria-label={done(sheet) ? w.testSheetDone(sheet) : w.testSheet(sheet)}
                  onChange={() => {
                    at.value = sheet;
                  }}
                />
                <span aria-hidden="true">{sheet}</span>
              </label>
            ))}
            <button
              type="button"
              class="button button-box"
              aria-label={w.testMore}
              onClick={() => {
                asked.value = count + 1;
                at.value = count + 1;
              }}
            >
              +
            </button>
          </fieldset>
          <div class="test-places" key={at.value}>
            {places.map((place) => {
              const read = readingOf(sheets, at.value, place);
              const name = told(place.name);
              return (
                <fieldset key={place.id} class="test-place" data-place={place.id}>
                  <legend>{name}</legend>
                  {(['across', 'down'] as const).map((way) => (
                    <LineField
                      key={way}
                      label={w[way]}
                      name={`${w.testSheet(at.value)}, ${name}, ${w[way]}`}
                      line={read?.[way] ?? null}
                      readsMm={sheets.readsMm}
                      most={lines}
                      onSet={(line, typed) => {
                        setTestLine(bench, sheets, { sheet: at.value, place: place.id, way, line });
                        if (typed) bench.settle();
                      }}
                    />
                  ))}
                </fieldset>
              );
            })}
          </div>
          <button
            type="button"
            class="button button-box test-next"
            onClick={(e) => {
              if (at.value === count) asked.value = count + 1;
              at.value += 1;
              // By key: on to the new sheet's first field. By thumb no keyboard is called up.
              if (e.detail === 0) requestAnimationFrame(() => document.querySelector<HTMLElement>('.line-field input')?.focus());
            }}
          >
            {w.testNext}
          </button>
        </div>
        <TestResult
          plan={plan}
          sheets={sheets}
          onUse={() => {
            useTested(bench);
            bench.announce(w.testUsed);
          }}
          onBack={() => takeBackTested(bench)}
          own={job.register.measured !== undefined}
        />
      </div>
    </section>
  );
}

function emptyFor({ image: { widthMm, heightMm }, register }: Pick<Job, 'image' | 'register'>): TestSheetsOfJob | null {
  try {
    const { readsMm } = registerTestSheet([widthMm, heightMm], testScaleFor(register.method));
    return { imageMm: [widthMm, heightMm], readsMm, readings: [] };
  } catch {
    // Too small an image to hold the scales: the packet has no test sheet for it either.
    return null;
  }
}

const readingOf = (sheets: TestSheetsOfJob, sheet: number, place: TestPlace) =>
  sheets.readings.find((one) => one.sheet === sheet && one.place === place.id);
