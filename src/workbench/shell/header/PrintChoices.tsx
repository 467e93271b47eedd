import { useComputed, useSignal } from '@preact/signals';
import { fingerprintOf } from '../../../core/job/index.ts';
import { packetParts, type PacketPart } from '../../../packet/parts.ts';
import { printerPages, type PrinterPage } from '../../../packet/printer.ts';
import type { PagePreview } from '../../../packet/index.ts';
import type { Bench } from '../../store/bench.ts';
import { words } from '../../store/words.ts';
import { takePacketAll, takePdf, takeShow, type Printing } from '../actions.ts';

/** What is to be printed and how; then each page to look at, and the files. Says when a packet no longer fits the job. */
export function PrintChoices({ bench, printing }: { readonly bench: Bench; readonly printing: Printing }) {
  const w = words().shell;
  const page = useSignal<PrinterPage>('a4');
  const left = useSignal<ReadonlySet<PacketPart>>(new Set());
  const black = useSignal(false),
    large = useSignal(false),
    split = useSignal(false);
  const job = bench.job.value;
  const mark = useComputed(() => {
    const now = bench.job.value;
    return now ? fingerprintOf({ job: now, attachments: bench.attachments.value }) : '';
  });
  const made = printing.made.value;
  const share = printing.share.value;
  const old = made !== null && !printing.fits(bench);
  if (!job) return null;
  const start = (): void => {
    const only = left.value.size > 0 ? packetParts.filter((part) => !left.value.has(part)) : undefined;
    void printing.start(bench, { page: page.value, only, black: black.value, large: large.value, split: split.value });
  };
  const ways = [
    [black, w.inBlack],
    [large, w.largeType],
    [split, w.twoFiles],
  ] as const;
  return (
    <div class="print-choices">
      <div class="row">
        <label>
          {w.packetPaper}{' '}
          <select
            class="choice"
            value={page.value}
            onChange={(e) => {
              page.value = printerPages.find((one) => one === e.currentTarget.value) ?? 'a4';
            }}
          >
            {printerPages.map((one) => (
              <option key={one} value={one}>
                {w[one]}
              </option>
            ))}
          </select>
        </label>
        {ways.map(([way, label]) => (
          <label key={label} class="print-way">
            <input
              type="checkbox"
              checked={way.value}
              onChange={(e) => {
                way.value = e.currentTarget.checked;
              }}
            />{' '}
            {label}
          </label>
        ))}
      </div>
      <fieldset class="row print-parts">
        <legend>{w.partsOfPacket}</legend>
        {packetParts.map((part) => (
          <label key={part} class="print-way">
            <input
              type="checkbox"
              checked={!left.value.has(part)}
              onChange={(e) => {
                const next = new Set(left.value);
                if (e.currentTarget.checked) next.delete(part);
                else next.add(part);
                left.value = next;
              }}
            />{' '}
            {w.packetPart[part]}
          </label>
        ))}
      </fieldset>
      <div class="row">
        {share === null ? (
          <button type="button" class="button button-strong" disabled={left.value.size === packetParts.length} onClick={start}>
            {w.print}
          </button>
        ) : (
          <>
            <progress value={share} aria-label={w.printing(Math.round(share * 100))} />
            <button type="button" class="button" onClick={() => printing.stop()}>
              {w.stop}
            </button>
          </>
        )}
        <span>{w.jobMark(mark.value)}</span>
        {made && !old && (
          <>
            {made.files
              .filter((file) => /^[^/]+\.pdf$/.test(file.path))
              .map((file) => (
                <button key={file.path} type="button" class="button packet-pdf" onClick={() => takePdf(bench, file)}>
                  {file.path === 'packet.pdf' ? w.packetPdf : file.path}
                </button>
              ))}
            {made.files
              .filter((file) => file.path === 'show.html')
              .map((file) => (
                <button key={file.path} type="button" class="button" onClick={() => takeShow(bench, file)}>
                  {w.packetShow}
                </button>
              ))}
            <button type="button" class="button" onClick={() => takePacketAll(bench, made.files)}>
              {w.packetAll}
            </button>
          </>
        )}
      </div>
      {made && old && (
        <p class="notice" role="alert">
          {w.packetOld(made.mark, mark.value)}
        </p>
      )}
      {made && (
        <div class={old ? 'packet-old' : ''}>
          <Pages pages={made.pages} />
        </div>
      )}
    </div>
  );
}

/** Every page small, in order; one at a time large. */
function Pages({ pages }: { readonly pages: readonly PagePreview[] }) {
  const w = words().shell;
  const chosen = useSignal<number | null>(null);
  const source = (page: PagePreview): string => `data:image/svg+xml;charset=utf-8,${encodeURIComponent(page.svg)}`;
  const numberOf = (at: number): number => pages.slice(0, at + 1).filter((one) => one.file === pages[at].file).length;
  const name = (at: number): string => w.pageOfFile(pages[at].file, numberOf(at));
  const at = chosen.value;
  return (
    <>
      {at !== null && pages[at] && (
        <figure class="print-large">
          <div class="row">
            <button
              type="button"
              class="button"
              disabled={at === 0}
              onClick={() => {
                chosen.value = at - 1;
              }}
            >
              {w.pageBefore}
            </button>
            <figcaption>{name(at)}</figcaption>
            <button
              type="button"
              class="button"
              disabled={at === pages.length - 1}
              onClick={() => {
                chosen.value = at + 1;
              }}
            >
              {w.pageAfter}
            </button>
            <button
              type="button"
              class="button"
              onClick={() => {
                chosen.value = null;
              }}
            >
              {w.allPages}
            </button>
          </div>
          <img src={source(pages[at])} alt={name(at)} />
        </figure>
      )}
      {(at === null || !pages[at]) && (
        <ol class="print-pages" aria-label={w.allPages}>
          {pages.map((page, i) => (
            <li key={`${page.file} ${i}`}>
              <button
                type="button"
                class="print-page"
                aria-label={name(i)}
                onClick={() => {
                  chosen.value = i;
                }}
              >
                <img loading="lazy" src={source(page)} alt="" />
              </button>
            </li>
          ))}
        </ol>
      )}
    </>
  );
}
