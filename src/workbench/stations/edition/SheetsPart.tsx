import type { PaperSheets } from '../../../core/edition/index.ts';
import { CountField } from '../../ui/fields/CountField.tsx';
import { saySetShare } from '../../ui/fields/units.ts';
import { Why } from '../../ui/fields/Why.tsx';
import { told, words } from '../../store/words.ts';
import type { PartProps } from '../press/setup/part.ts';
import { setEdition, setWantedOn, takeEnough } from './edits.ts';

/** How many sheets to start: the wishes, and for each paper the chances as a picture. */
export function SheetsPart({ bench, plan }: PartProps) {
  const w = words().edition;
  const job = bench.job.value!;
  const wish = job.edition;
  const { sheets, problems } = plan.edition;
  const start = sheets?.papers.reduce((sum, p) => sum + p.start, 0) ?? 0;
  const percent = (share: number): number => Math.round(share * 1000) / 10;
  return (
    <div class="part-two part-narrow">
      <div class="part-words">
        <h2>{w.startHead(start)}</h2>
        {sheets && (
          <p>
            {sheets.papers.map((p) => w.ofPaper(p.start, p.name)).join(' · ')}
            <br />
            {w.setUpToo(told(sheets.setUp.text))}
          </p>
        )}
        {sheets === null &&
          problems
            .filter((p) => p.severity === 'error')
            .map((p) => (
              <p key={`${p.code} ${p.path}`} class="says-do">
                <b>{told(p.message)}</b> {told(p.advice)}
              </p>
            ))}
        <div class="fields">
          <CountField
            label={w.target}
            value={wish.target}
            min={0}
            max={10000}
            onSet={(v) => setEdition(bench, 'target', { target: Math.round(v) })}
          />
          <CountField
            label={w.certainty}
            value={percent(wish.certainty)}
            min={1}
            max={99.9}
            digits={1}
            unit="%"
            onSet={(v) => setEdition(bench, 'certainty', { certainty: v / 100 })}
          />
          <CountField
            label={w.spoilage}
            value={percent(wish.spoilagePerRun)}
            min={0}
            max={95}
            digits={1}
            unit="%"
            onSet={(v) => setEdition(bench, 'spoilage', { spoilagePerRun: v / 100 })}
          />
          <CountField
            label={w.setUpSheets}
            value={wish.setUpSheets}
            min={0}
            max={1000}
            onSet={(v) => setEdition(bench, 'set-up', { setUpSheets: Math.round(v) })}
          />
          <CountField
            label={w.artists}
            value={percent(wish.artistsProofShare)}
            min={0}
            max={100}
            digits={1}
            unit="%"
            onSet={(v) => setEdition(bench, 'artists', { artistsProofShare: v / 100 })}
          />
          <CountField
            label={w.bat}
            value={wish.batProofs}
            min={0}
            max={20}
            onSet={(v) => setEdition(bench, 'bat', { batProofs: Math.round(v) })}
          />
          <CountField
            label={w.printers}
            value={wish.printersProofs}
            min={0}
            max={200}
            onSet={(v) => setEdition(bench, 'printers', { printersProofs: Math.round(v) })}
          />
          <CountField
            label={w.horsCommerce}
            value={wish.horsCommerce}
            min={0}
            max={200}
            onSet={(v) => setEdition(bench, 'hors-commerce', { horsCommerce: Math.round(v) })}
          />
          <span>
            {w.proofsNamed} <Why of={w.proofsNamed}>{w.proofsWhy}</Why>
          </span>
          <label class="length-field">
            <span class="length-label">{w.papersAre}</span>
            <select
              class="choice"
              value={wish.papersAre}
              onChange={(e) =>
                setEdition(bench, 'papers-are', { papersAre: e.currentTarget.value === 'varied' ? 'varied' : 'sub-editions' })
              }
            >
              <option value="sub-editions">{w.subEditions}</option>
              <option value="varied">{w.varied}</option>
            </select>
          </label>
          {job.papers.length > 1 && (
            <label class="length-field">
              <span class="length-label">{w.proofsOn}</span>
              <select
                class="choice"
                value={wish.proofsOn ?? ''}
                onChange={(e) => setEdition(bench, 'proofs-on', { proofsOn: e.currentTarget.value || undefined })}
              >
                <option value="">{w.proofsShared}</option>
                {job.papers.map((p) => (
                  <option key={p.id} value={p.id}>
                    {p.name}
                  </option>
                ))}
              </select>
            </label>
          )}
          {job.papers.length > 1 &&
            job.papers.map((p) => (
              <span key={p.id} class="length-field">
                <label class="length-label" for={`wanted-${p.id}`}>
                  {w.wantedOn(p.name)}
                </label>
                <span class="number-field">
                  <input
                    id={`wanted-${p.id}`}
                    type="text"
                    inputMode="numeric"
                    placeholder={String(sheets?.papers.find((s) => s.paperId === p.id)?.edition ?? '')}
                    value={p.wantedPrints ?? ''}
                    onChange={(e) => {
                      const typed = e.currentTarget.value.trim();
                      const count = Math.round(Number(typed));
                      if (typed === '') setWantedOn(bench, p.id, null);
                      else if (count >= 0 && count <= 10000) setWantedOn(bench, p.id, count);
                      else e.currentTarget.value = String(p.wantedPrints ?? '');
                    }}
                  />
                </span>
              </span>
            ))}
        </div>
        {sheets && (
          <>
            <h3>{w.through}</h3>
            <ol class="through">
              {sheets.runs.map((run, i) => (
                <li key={run.run} style={{ '--share': `${(100 * run.expected) / Math.max(1, start)}%` }}>
                  {w.throughRun(i + 1, plan.layers[i]?.name ?? '', run.prepare)}
                </li>
              ))}
            </ol>
          </>
        )}
      </div>
      <div class="chances">
        {sheets?.papers.map((paper) => (
          <Chances
            key={paper.paperId}
            bench={bench}
            paper={paper}
            exactly={plan.edition.chances.find((c) => c.paperId === paper.paperId)?.exactly ?? []}
            why={w.chancesWhy(saySetShare(wish.spoilagePerRun), sheets.runs.length)}
            own={(job.papers.find((p) => p.id === paper.paperId)?.count ?? 0) > 0}
          />
        ))}
      </div>
    </div>
  );
}

interface ChancesProps {
  readonly bench: PartProps['bench'];
  readonly paper: PaperSheets;
  readonly exactly: readonly number[];
  readonly why: string;
  /** The printmaker has said how many sheets there are. */
  readonly own: boolean;
}

/** How many good sheets come out of a stack: a column for each number, black where it is enough. */
function Chances({ bench, paper, exactly, why, own }: ChancesProps) {
  const w = words().edition;
  const most = Math.max(1e-9, ...exactly);
  // The far tails would be columns of nothing.
  const first = Math.max(
    0,
    Math.min(
      paper.wanted,
      exactly.findIndex((p) => p > most / 500),
    ) - 1,
  );
  const last = exactly.length - 1;
  const drawn = last - first <= 80;
  const every = Math.ceil((last - first + 1) / 20);
  const sure = w.sure(Math.floor(paper.certainty * 100 + 1e-9));
  return (
    <section class="chance" aria-label={paper.name}>
      <h3>
        {paper.name}
        {paper.apart && <small>{w.apart}</small>}
      </h3>
      <p>
        <b>{w.ofPaper(paper.start, paper.name)}</b> {w.wanted(paper.wanted, paper.edition, paper.proofs.total)}: <b>{sure}</b>
        <Why of={paper.name}>{why}</Why>
      </p>
      {drawn ? (
        <div class="chance-bars" role="img" aria-label={w.chances(paper.name, paper.wanted, sure)}>
          {exactly.slice(first).map((p, i) => (
            <span key={i} class={first + i >= paper.wanted ? 'chance-enough' : 'chance-short'}>
              <i style={{ height: `${(100 * p) / most}%` }} />
              <small>{i % every === 0 || first + i === paper.wanted ? first + i : ''}</small>
            </span>
          ))}
        </div>
      ) : (
        <p>{w.tooMany}</p>
      )}
      <p class="field-note">{w.goodSheets}</p>
      {own && paper.start < paper.toStart && (
        <p class="says-do">
          {w.startMore(paper.toStart)}{' '}
          <button type="button" class="button button-box" onClick={() => takeEnough(bench)}>
            {w.takeEnough}
          </button>
        </p>
      )}
    </section>
  );
}
