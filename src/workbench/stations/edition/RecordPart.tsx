import { cancellationSteps, labelsFor, registerRows, writeCsv } from '../../../core/edition/index.ts';
import { type Job, fileStem } from '../../../core/job/index.ts';
import { download } from '../../store/keep/files.ts';
import { CountField } from '../../ui/fields/CountField.tsx';
import { TextField } from '../../ui/fields/TextField.tsx';
import { saySize } from '../../ui/fields/units.ts';
import { Why } from '../../ui/fields/Why.tsx';
import { told, words } from '../../store/words.ts';
import type { PartProps } from '../press/setup/part.ts';
import { setEdition, setMaker, setRecord } from './edits.ts';

type Master = NonNullable<Job['edition']['record']['master']>;

/** What is written down about the edition, as it will stand on the documentation sheet; labels and tables to take away. */
export function RecordPart({ bench, plan }: PartProps) {
  const w = words().edition;
  const job = bench.job.value!;
  const { record } = job.edition;
  const { documentation, numbered, facts, colophon } = plan.edition;
  const labels = numbered ? labelsFor(facts, numbered) : [];
  const known: readonly (readonly [string, string])[] = [
    [w.titleOf, facts.title],
    [w.artist, facts.artist ?? ''],
    [w.year, String(facts.year ?? '')],
    [w.workshop, facts.workshop ?? ''],
    [w.image, saySize(...facts.imageMm, job.units)],
    [w.papers, facts.papers.map((p) => `${p.name}, ${saySize(...p.sizeMm, job.units)}`).join('; ')],
  ];
  const stem = fileStem(job.title);
  const save = (text: string, name: string): void => {
    download(new TextEncoder().encode(text), name, 'text/csv');
    bench.announce(w.saved(name));
  };
  const copy = (): void =>
    void navigator.clipboard.writeText(colophon ? told(colophon) : '').then(
      () => bench.announce(w.copied),
      () => bench.announce(w.notCopied),
    );
  const masters: readonly (readonly [Master, string])[] = [
    ['kept', w.kept],
    ['cancelled', w.cancelled],
    ['destroyed', w.destroyed],
    ['worn out', w.worn],
  ];
  return (
    <div class="part-two">
      <div class="part-words">
        <h2>
          {w.record}
          <Why of={w.record}>{w.recordWhy}</Why>
        </h2>
        <div class="fields fields-one">
          <TextField label={w.artist} value={job.maker} most={300} onSet={(v) => setMaker(bench, v)} />
          <CountField
            label={w.year}
            value={job.edition.year ?? 0}
            min={1400}
            max={3000}
            onSet={(v) => setEdition(bench, 'record', { year: Math.round(v) })}
          />
          <TextField
            label={w.workshop}
            value={job.edition.workshop ?? ''}
            most={300}
            onSet={(v) => setEdition(bench, 'record', { workshop: v })}
          />
          <TextField label={w.printer} value={record.printer ?? ''} most={300} onSet={(v) => setRecord(bench, { printer: v })} />
          <TextField
            label={w.signature}
            value={record.signature ?? ''}
            hint={w.signatureHint}
            most={300}
            onSet={(v) => setRecord(bench, { signature: v })}
          />
          <TextField label={w.printedFrom} value={record.printedFrom ?? ''} most={40} onSet={(v) => setRecord(bench, { printedFrom: v })} />
          <TextField label={w.printedTo} value={record.printedTo ?? ''} most={40} onSet={(v) => setRecord(bench, { printedTo: v })} />
          <TextField label={w.other} value={record.otherEditions ?? ''} most={1000} onSet={(v) => setRecord(bench, { otherEditions: v })} />
          <label class="length-field">
            <span class="length-label">{w.master}</span>
            <select
              class="choice"
              value={record.master ?? ''}
              onChange={(e) => setRecord(bench, { master: masters.find(([id]) => id === e.currentTarget.value)?.[0] })}
            >
              <option value="">{w.masterOpen}</option>
              {masters.map(([id, name]) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <label class="length-field">
            <span class="length-label">{w.lifetime}</span>
            <select
              class="choice"
              value={record.posthumous === undefined ? '' : record.posthumous ? 'no' : 'yes'}
              onChange={(e) => setRecord(bench, { posthumous: e.currentTarget.value === '' ? undefined : e.currentTarget.value === 'no' })}
            >
              <option value="">{w.lifetimeOpen}</option>
              <option value="yes">{w.yes}</option>
              <option value="no">{w.no}</option>
            </select>
          </label>
        </div>
        <h3>{w.cancellation}</h3>
        <ol class="numbered">
          {cancellationSteps.map((line) => (
            <li key={line.key}>{told(line)}</li>
          ))}
        </ol>
      </div>
      <div class="part-words">
        <section class="leaf" aria-label={w.documentation}>
          <h3>{w.documentation}</h3>
          {documentation ? (
            <>
              <dl>
                {documentation.fields.map((f) => (
                  <div key={f.id} class={f.value === null ? 'line-open' : ''}>
                    <dt>{told(f.label)}</dt>
                    <dd>{f.value && told(f.value)}</dd>
                  </div>
                ))}
              </dl>
              <p>{told(documentation.footing)}</p>
            </>
          ) : (
            <dl>
              {known.map(([label, value]) => (
                <div key={label} class={value ? '' : 'line-open'}>
                  <dt>{label}</dt>
                  <dd>{value}</dd>
                </div>
              ))}
            </dl>
          )}
          <h4>{w.layers}</h4>
          <ol>
            {facts.layers.map((l) => (
              <li key={l.name}>
                <b>{l.name}</b>: {told(l.stencil)}; {told(l.recipe ?? l.ink)}; {told(l.mesh)}
              </li>
            ))}
          </ol>
          {!documentation && <p>{w.afterCount}</p>}
        </section>
        {colophon && (
          <section aria-label={w.colophon}>
            <h3>{w.colophon}</h3>
            <p class="colophon">{told(colophon)}</p>
            <button type="button" class="button button-box" onClick={copy}>
              {w.copyColophon}
            </button>
          </section>
        )}
        <section aria-label={w.files}>
          <h3>{w.files}</h3>
          {numbered ? (
            <div class="row">
              <button
                type="button"
                class="button button-box"
                onClick={() => save(writeCsv(registerRows(facts, numbered, told)), w.registerFile(stem))}
              >
                {w.registerCsv}
              </button>
              <button
                type="button"
                class="button button-box"
                disabled={labels.length === 0}
                onClick={() => save(writeCsv(labels.map((l) => [l.sheetId, ...l.lines.map(({ text }) => told(text))])), w.labelsFile(stem))}
              >
                {w.labelsCsv}
              </button>
            </div>
          ) : (
            <p>{w.labelsNone}</p>
          )}
          <p class="field-note">{w.inPacket}</p>
        </section>
        {labels.length > 0 && (
          <section aria-label={w.labels}>
            <h3>{w.labels}</h3>
            <ul class="labels">
              {labels.map((l) => (
                <li key={l.sheetId}>
                  {l.lines.map(({ what, text }) =>
                    what === 'title' ? <b key={what}>{told(text)}</b> : <span key={what}>{told(text)}</span>,
                  )}
                </li>
              ))}
            </ul>
          </section>
        )}
      </div>
    </div>
  );
}
