import { sayLength, sayMinutes } from '../../../ui/fields/units.ts';
import { sayDelta, sayPercent } from '../../../ui/fields/format.ts';
import { ProblemList } from '../../../ui/ProblemList.tsx';
import { Why } from '../../../ui/fields/Why.tsx';
import { words } from '../../../store/words.ts';
import { Compare } from './Compare.tsx';
import { CompareBar } from './CompareBar.tsx';
import { Curve } from '../marks/Curve.tsx';
import type { PicturePartProps } from '../part.ts';
import { RunBar } from './RunBar.tsx';
import { Runs } from './Runs.tsx';
import { WaysChoice } from './WaysChoice.tsx';
import { sayKnife } from '../say.ts';
import { LostDrawing } from './LostDrawing.tsx';
import { making } from '../state.ts';
import type { ShownSeparation } from '../worker/protocol.ts';

/** The way to make it the job, the print beside the picture and beside flat inks: pictures, figures, what it costs. */
export function ResultPart({ bench, job, picture, read }: PicturePartProps) {
  const result = making.value?.result ?? null,
    // What is lost of the drawing is shown as pictures.
    told = result?.problems.filter(({ code }) => code !== 'drawing-lost') ?? [];
  return (
    <div class="picture-result">
      <div class="result-bar">
        <RunBar bench={bench} job={job} picture={picture} />
        {result && <CompareBar result={result} />}
      </div>
      <Compare job={job} picture={picture} read={read} />
      {result && (
        <>
          <WaysChoice bench={bench} job={job} picture={picture} />
          {result.lost.length > 0 && <LostDrawing bench={bench} job={job} picture={picture} read={read} result={result} />}
          <Figures result={result} job={job} />
          <div class="picture-two">
            <Curve bench={bench} job={job} picture={picture} result={result} />
            <Runs job={job} result={result} />
          </div>
          {told.length > 0 && <ProblemList problems={told} />}
        </>
      )}
    </div>
  );
}

function Figures({ result, job }: { readonly result: ShownSeparation; readonly job: PicturePartProps['job'] }) {
  const w = words().picture;
  const { figures, flatFigures } = result;
  const sigma = sayLength(figures.atSigma.sigmaMm, job.units, job.units === 'mm' ? 2 : 3);
  const rows = [
    ['mean', w.mean],
    ['median', w.median],
    ['p95', w.p95],
  ] as const;
  return (
    <div class="picture-figures">
      <ul class="knife-facts">
        <li>
          <b>{w.knifeMetres(sayKnife(figures.knifeMetres, job.units))}</b>
          <Why of={w.knifeMetres('')}>{w.knifeWhy}</Why>
        </li>
        <li>
          <b>
            {w.knifePieces(figures.pieces)}, {w.knifeBridges(figures.bridges)}
          </b>
        </li>
        <li>
          <b>{w.knifeMinutes(sayMinutes(figures.minutes))}</b>
        </li>
        {result.asDrawing && (
          <li>
            <b>{w.takenAsDrawing}</b>
            <Why of={w.takenAsDrawing}>{w.takenAsWhy}</Why>
          </li>
        )}
        <li>
          <b>{w.outOfReach(sayPercent(result.outOfReachShare))}</b>
          <Why of={w.outOfReach('')}>{w.reachShareWhy}</Why>
        </li>
        <li>
          <b>{w.drawing(sayPercent(figures.structure.kept), sayPercent(figures.structure.invented))}</b>
          <Why of={w.drawing('', '')}>
            {w.drawingWhy(sayPercent(flatFigures.structure.kept), sayPercent(flatFigures.structure.invented))}
          </Why>
        </li>
        <li>
          <span>
            <b>{words().overlaps.apartWords(result.detailLostDeltaE)}</b>, {w.lost(sayDelta(result.detailLostDeltaE))}
          </span>
          <Why of={w.lost('')}>{w.lostWhy}</Why>
        </li>
      </ul>
      <div class="table-scroll" tabindex={0} role="region" aria-label={w.table}>
        <table class="delta-table">
          <caption>
            {w.table}
            <Why of={w.table}>{w.deltaWhy}</Why>
          </caption>
          <thead>
            <tr>
              <td />
              <th scope="colgroup" colSpan={2}>
                {w.thePrint}
              </th>
              <th scope="colgroup" colSpan={2}>
                {w.flat(result.flatInks.length)}
              </th>
            </tr>
            <tr>
              <td />
              <th scope="col">{w.inRegister}</th>
              <th scope="col">{w.off(sigma)}</th>
              <th scope="col">{w.inRegister}</th>
              <th scope="col">{w.off(sigma)}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([key, name]) => (
              <tr key={key}>
                <th scope="row">{name}</th>
                <td>{sayDelta(figures.inRegister[key])}</td>
                <td>{sayDelta(figures.atSigma[key])}</td>
                <td>{sayDelta(flatFigures.inRegister[key])}</td>
                <td>{sayDelta(flatFigures.atSigma[key])}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
