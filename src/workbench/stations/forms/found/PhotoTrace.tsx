import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { boardSquares } from '../../../../core/form/index.ts';
import type { JobForm } from '../../../../core/job/index.ts';
import { name as asName, say } from '../../../../words/one-language.ts';
import type { Bench } from '../../../store/bench.ts';
import { holdStill, type Mm } from '../../../ui/screen/drag.ts';
import { useOpened } from '../../../ui/screen/opened.ts';
import { LengthField } from '../../../ui/fields/LengthField.tsx';
import { Marker } from '../../../ui/screen/Marker.tsx';
import { NumberField } from '../../../ui/fields/NumberField.tsx';
import { ProblemList } from '../../../ui/ProblemList.tsx';
import { Slider } from '../../../ui/fields/Slider.tsx';
import { faultsOf } from '../../../engine/faults.ts';
import { step, words } from '../../../store/words.ts';
import type { TraceAnswer, TraceAsk } from '../../../engine/protocol.ts';
import { keptCameras, knownCameras } from '../../../store/keep/lens.ts';
import { BoardLens, KeptLensNote } from './LensPart.tsx';
import { kinds, leavePhotograph, type Kind, type Photograph } from './photograph.ts';
import { TracedOutline } from './TracedOutline.tsx';
import { freshId, newCut, newPart, withForm } from '../edits.ts';
import { inHand, takeForm } from '../state.ts';

/** The next photograph is mostly of the same kind: boards come one after another. */
let lastKind: Kind = 'a4';

/** A photograph of a real thing on its sheet: corners to move, a threshold, and the outline that comes of it. */
export function PhotoTrace({ bench, photo }: { readonly bench: Bench; readonly photo: Photograph }) {
  const w = words().forms;
  const job = bench.job.value!;
  const kind = useSignal(lastKind);
  const ppi = useSignal(300);
  const maskWidth = useSignal(job.image.widthMm / 2);
  const dark = useSignal(0.5);
  const smoothMm = useSignal(0.05);
  const leastMm2 = useSignal(4);
  const openings = useSignal(false);
  const apartMm = useSignal(0);
  const squareMm = useSignal<number>(boardSquares.squareMm);
  const corners = useSignal<readonly Mm[] | null>(null);
  const name = useSignal(photo.name);
  const answer = useSignal<TraceAnswer | null>(null);
  const busy = useSignal(false);
  const ground = useRef<SVGGElement>(null);
  const known = useRef(false);
  const wanted = useRef(0);

  const trace = async (): Promise<void> => {
    const mine = ++wanted.current;
    busy.value = true;
    const what: TraceAsk['what'] =
      kind.value === 'board'
        ? { kind: 'board', squareMm: squareMm.value }
        : kind.value === 'scan'
          ? { kind: 'scan', pixelsPerInch: ppi.value }
          : kind.value === 'mask'
            ? { kind: 'mask', widthMm: maskWidth.value }
            : { kind: 'photo', sheet: kind.value, ...(corners.value ? { corners: corners.value } : {}) };
    try {
      const first = !known.current;
      known.current = true;
      const found = await bench.ask('trace', {
        id: photo.id,
        name: photo.name,
        what,
        darkShare: dark.value,
        smoothMm: smoothMm.value,
        leastMm2: leastMm2.value,
        openings: openings.value,
        ...(apartMm.value > 0 ? { apartMm: apartMm.value } : {}),
        ...(kind.value === 'board' ? { kept: keptCameras.value } : { cameras: knownCameras(bench.job.value!) }),
        ...(first ? { bytes: photo.bytes } : {}),
      });
      if (mine !== wanted.current) return;
      answer.value = found;
      if (!corners.value && what.kind === 'photo') {
        const { widthPx: x, heightPx: y } = found;
        corners.value =
          found.corners.length === 4
            ? found.corners
            : [
                [x * 0.1, y * 0.1],
                [x * 0.9, y * 0.1],
                [x * 0.9, y * 0.9],
                [x * 0.1, y * 0.9],
              ];
      }
    } catch (error) {
      bench.refuse(faultsOf(error, say('where.file', { file: asName(photo.name) })));
      leavePhotograph();
    } finally {
      if (mine === wanted.current) busy.value = false;
    }
  };
  useEffect(() => {
    void trace();
  }, [photo.id]);
  useEffect(() => (ground.current?.ownerSVGElement ? holdStill(ground.current.ownerSVGElement) : undefined), [answer.value === null]);
  const section = useOpened([photo.id]);
  const change = (set: () => void): void => {
    set();
    void trace();
  };

  const found = answer.value;
  const traced = found?.traced ?? null;
  const keep = (): void => {
    if (!traced) return;
    const form: JobForm = { id: freshId(job.forms, name.value), name: name.value.trim() || photo.name, outline: traced.outline };
    const empty = job.cuts.length === 0;
    bench.edit(step('bringForm', form.name), (j) =>
      empty ? newCut(withForm(j, form), form.name, newPart(form.id, j.image.widthMm / 2, j.image.heightMm / 2)).job : withForm(j, form),
    );
    if (empty) inHand.value = { cutId: null, part: 0, formId: null };
    else takeForm(form.id);
    leavePhotograph();
    bench.announce(w.brought(form.name));
  };
  // Markers are drawn at this many screen pixels for a pixel of the photograph; near enough for a column this wide.
  const perPx = found ? 420 / found.widthPx : 1;
  return (
    <section
      class="trace"
      ref={section}
      tabIndex={-1}
      aria-labelledby="trace-title"
      onKeyDown={(e) => {
        if (e.key !== 'Escape' || e.defaultPrevented) return;
        e.preventDefault();
        leavePhotograph();
      }}
    >
      <h2 id="trace-title">{w.traceTitle}</h2>
      <fieldset class="choices">
        <legend class="unseen">{w.traceIs}</legend>
        {kinds.map((k) => (
          <label key={k} class="choice-mark">
            <input
              type="radio"
              name="trace-kind"
              checked={kind.value === k}
              onChange={() =>
                change(() => {
                  lastKind = kind.value = k;
                })
              }
            />
            <span>{w.traceKinds[k]}</span>
          </label>
        ))}
      </fieldset>
      {found && (
        <svg class="trace-photo" viewBox={`0 0 ${found.widthPx} ${found.heightPx}`} role="group" aria-label={photo.name}>
          <g ref={ground}>
            <image href={photo.url} width={found.widthPx} height={found.heightPx} />
            {corners.value && (kind.value === 'a4' || kind.value === 'letter') && (
              <>
                <path class="trace-sheet" d={`M${corners.value.map((c) => c.join(' ')).join('L')}Z`} />
                {corners.value.map((corner, i) => (
                  <Marker
                    key={i}
                    at={corner}
                    label={w.corner(i + 1)}
                    ground={ground}
                    pxPerMm={perPx}
                    onMove={(to) => {
                      corners.value = corners.value!.map((c, k) => (k === i ? to : c));
                    }}
                    onEnd={() => void trace()}
                  />
                ))}
              </>
            )}
          </g>
        </svg>
      )}
      {(kind.value === 'a4' || kind.value === 'letter') && <p class="num-note">{w.traceHow}</p>}
      <div class="nums">
        {kind.value === 'scan' && (
          <label class="num">
            <span>{w.scanPpi}</span>
            <NumberField
              label={w.scanPpi}
              value={ppi.value}
              min={20}
              max={10000}
              unit=""
              onSet={(v) =>
                change(() => {
                  ppi.value = v;
                })
              }
            />
          </label>
        )}
        {kind.value === 'mask' && (
          <label class="num">
            <span>{w.maskWidth}</span>
            <LengthField
              label={w.maskWidth}
              valueMm={maskWidth.value}
              minMm={1}
              maxMm={5000}
              units={job.units}
              onSet={(v) =>
                change(() => {
                  maskWidth.value = v;
                })
              }
            />
          </label>
        )}
        <label class="num">
          <span>{w.smooth}</span>
          <LengthField
            label={w.smooth}
            valueMm={smoothMm.value}
            minMm={0}
            maxMm={5}
            units={job.units}
            onSet={(v) =>
              change(() => {
                smoothMm.value = v;
              })
            }
          />
        </label>
        <label class="num">
          <span>{w.apart}</span>
          <LengthField
            label={w.apart}
            valueMm={apartMm.value}
            minMm={0}
            maxMm={50}
            units={job.units}
            onSet={(v) =>
              change(() => {
                apartMm.value = v;
              })
            }
          />
        </label>
        {kind.value === 'board' && (
          <label class="num">
            <span>{w.squareSide}</span>
            <LengthField
              label={w.squareSide}
              valueMm={squareMm.value}
              minMm={1}
              maxMm={500}
              units={job.units}
              onSet={(v) =>
                change(() => {
                  squareMm.value = v;
                })
              }
            />
          </label>
        )}
        <label class="num">
          <span>{w.specks}</span>
          <NumberField
            label={w.specks}
            value={leastMm2.value}
            min={0}
            max={1000}
            digits={1}
            unit="mm²"
            onSet={(v) =>
              change(() => {
                leastMm2.value = v;
              })
            }
          />
        </label>
      </div>
      {kind.value !== 'mask' && (
        <label class="num">
          <span>
            {w.threshold} {w.thresholdText(Math.round((1 - dark.value) * 100))}
          </span>
          <Slider
            label={w.threshold}
            value={1 - dark.value}
            min={0.1}
            max={0.9}
            step={0.01}
            text={w.thresholdText(Math.round((1 - dark.value) * 100))}
            onMove={(v) => {
              dark.value = 1 - v;
            }}
            onSettle={() => void trace()}
          />
        </label>
      )}
      {busy.value && <p role="status">{w.tracing}</p>}
      {found && found.problems.length > 0 && <ProblemList problems={found.problems} />}
      <TracedOutline
        traced={traced}
        units={job.units}
        openings={openings.value}
        onOpenings={(is) =>
          change(() => {
            openings.value = is;
          })
        }
      />
      {kind.value === 'board' && <BoardLens bench={bench} found={found} />}
      {found?.camera && <KeptLensNote bench={bench} camera={found.camera} onForget={() => void trace()} />}
      <div class="row">
        <input
          class="text"
          aria-label={w.photoName}
          value={name.value}
          maxLength={200}
          onInput={(e) => {
            name.value = e.currentTarget.value;
          }}
        />
        <button type="button" class="button button-strong" disabled={!traced || busy.value} onClick={keep}>
          {w.makeForm}
        </button>
        <button type="button" class="button button-line" onClick={leavePhotograph}>
          {w.leaveTrace}
        </button>
      </div>
    </section>
  );
}
