import { useComputed, useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { underLamp } from '../../../core/asks/index.ts';
import type { Illuminant } from '../../../core/colour/index.ts';
import { OverlapLine } from '../../ui/proof/OverlapLine.tsx';
import { PaperSwitch } from '../../ui/proof/PaperSwitch.tsx';
import { ProofSheet } from '../../ui/proof/ProofSheet.tsx';
import { Why } from '../../ui/fields/Why.tsx';
import { told, words } from '../../store/words.ts';
import type { StationProps } from '../station.ts';
import { Detail } from './Detail.tsx';
import { Grounds } from './Grounds.tsx';
import { Lamps } from './Lamps.tsx';
import { FocusedProof } from './FocusedProof.tsx';
import { PhotoButton, PrintPhoto } from './print/PrintPhoto.tsx';
import { printPhoto } from './print/photograph.ts';
import { sortings, sortOverlaps, type SortBy } from './sort.ts';
import { Spread } from './Spread.tsx';
import { SwatchGrid } from './SwatchGrid.tsx';
import { WorthReading } from './WorthReading.tsx';

/** The overlap chart: point at the proof to find the overlap, point at a swatch to find it on the proof. */
export function OverlapsView({ bench }: StationProps) {
  /** Under the pointer or the keys; and held by a press. By code, so that they last through a change of paper. */
  const pointed = useSignal<number | null>(null);
  const held = useSignal<number | null>(null);
  const by = useSignal<SortBy>('films');
  /** Which ground of a printed sheet is looked at. */
  const region = useSignal<number | null>(null);
  const lamp = useSignal<Illuminant>('D50');
  const shown = useComputed(() => pointed.value ?? held.value);
  const w = words().overlaps;
  const plan = bench.plan.value;
  const asJudged = bench.paper.value;
  const paper = useMemo(() => asJudged && underLamp(asJudged, lamp.value), [asJudged, lamp.value]);
  if (!plan || !paper) return null;

  const overlaps = sortOverlaps(paper.overlaps, by.value);
  const ramps = paper === asJudged ? paper : { tones: null };
  const labels = { films: w.byFilms, area: w.byArea, lightness: w.byLightness, hue: w.byHue };
  const hold = (code: number | null): void => {
    held.value = held.value === code ? null : code;
  };
  return (
    <div class="overlaps">
      {printPhoto.value && (
        <PrintPhoto key={printPhoto.value.id} bench={bench} plan={plan} paper={asJudged ?? paper} photo={printPhoto.value} />
      )}
      <figure class="proof-figure">
        <ProofSheet plan={plan} paper={paper}>
          <FocusedProof
            bench={bench}
            plan={plan}
            paper={paper}
            shown={shown}
            lamp={lamp.value}
            onPoint={(code, press, pixel) => {
              const at = pixel === null ? null : (paper.grounds?.regions[pixel] ?? null);
              // Let go of the proof, the ground that was held stays in sight.
              if (at !== null || held.value === null) region.value = at;
              if (press) hold(code);
              else pointed.value = code;
            }}
          />
        </ProofSheet>
        <figcaption>
          <OverlapLine plan={plan} paper={paper} code={shown} hint={w.point} />
        </figcaption>
      </figure>
      <section class="chart" aria-label={w.chart}>
        <Detail
          plan={plan}
          paper={paper}
          ramps={ramps}
          shown={shown}
          held={held}
          region={region}
          onLetGo={() => {
            held.value = null;
          }}
        />
        <PaperSwitch bench={bench} />
        <PhotoButton />
        <div class="chart-head">
          <h2>{w.chartOn(paper.name, overlaps.length)}</h2>
          <Why of={w.chartOn(paper.name, overlaps.length)}>
            {w.chartWhy(plan.layers.filter((l) => l.inkId !== null).length, told(paper.bandNote))}
          </Why>
          <label class="sort">
            {w.sortBy}{' '}
            <select
              class="choice"
              value={by.value}
              onChange={(e) => {
                by.value = e.currentTarget.value as SortBy;
              }}
            >
              {sortings.map((s) => (
                <option key={s} value={s}>
                  {labels[s]}
                </option>
              ))}
            </select>
          </label>
        </div>
        {paper.lights.length > 0 && <Lamps plan={plan} paper={asJudged ?? paper} lamp={lamp} held={held} region={region} />}
        {paper.grounds && <Grounds plan={plan} paper={paper} shown={shown} held={held} region={region} />}
        <WorthReading plan={plan} paper={paper} held={held.value} onShow={hold} />
        <Spread bench={bench} plan={plan} paper={asJudged ?? paper} held={held.value} onShow={hold} />
        <SwatchGrid plan={plan} paper={ramps} overlaps={overlaps} pointed={pointed} held={held} shown={shown} onHold={hold} />
      </section>
    </div>
  );
}
