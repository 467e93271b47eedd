import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { KeptPrint } from '../../store/keep/keep.ts';
import { keepProof, smallProofs } from '../../store/keep/sight.ts';
import { putOn } from '../../store/start.ts';
import { language, words } from '../../store/words.ts';
import { Announcer } from '../../ui/Announcer.tsx';
import { attempt, makeRoom } from '../actions.ts';
import type { ShellProps } from '../props.ts';
import { exportPrints, printFrom } from './many.ts';
import { keepThumb, makeThumbs } from './thumbs.ts';

/** One's prints, a small proof each: to open, copy, begin anew from, put away. The one on the bench hangs among them. */
export function Wall({ bench, keeping, keeper, onNew }: ShellProps & { readonly onNew?: () => void }) {
  const w = words().prints;
  const proofs = useSignal<ReadonlyMap<string, string>>(new Map());
  const thrown = useSignal<string | null>(null);
  const stop = useMemo(() => new AbortController(), []);
  const making = useMemo(() => new Set<string>(), []);
  const look = async (): Promise<void> => {
    await keepThumb(bench, keeping);
    await keeping.flush();
    await keeping.look();
    const ids = keeping.prints.peek().map((one) => one.print);
    proofs.value = await smallProofs(ids);
    void makeThumbs(
      bench,
      keeper,
      ids.filter((id) => id !== keeping.print.peek() && !proofs.peek().has(id) && !making.has(id) && making.add(id)),
      stop.signal,
      (id, address) => {
        proofs.value = new Map(proofs.peek()).set(id, address);
      },
    );
  };
  useEffect(() => {
    void look();
    return () => stop.abort();
  }, []);

  const prints = keeping.prints.value;
  const hung = prints.filter((one) => !one.away),
    away = prints.filter((one) => one.away);
  const does = (work: () => Promise<void>) => (): void => void attempt(bench, work).then(look);
  const open = (one: KeptPrint) => async (): Promise<void> => {
    if (one.print === keeping.print.peek() && bench.job.peek()) return goToBench();
    await makeRoom(bench, keeping);
    const whole = await keeper.print(one.print);
    if (!whole) return;
    putOn(bench, keeping, whole, whole.servedPrint, whole);
    bench.announce(whole.job.title);
    goToBench();
  };
  const make = (one: KeptPrint, what: 'copy' | 'next') => async (): Promise<void> => {
    await keeping.flush();
    const whole = await keeper.print(one.print);
    if (!whole) return;
    const print = crypto.randomUUID();
    const made = { print, ...printFrom(whole, what, [...prints.map((p) => p.job.title)]), servedPrint: null, changed: false, own: true };
    if (what === 'copy') {
      await keeper.keepPrint(made);
      // It looks the same.
      const address = proofs.peek().get(one.print);
      if (address !== undefined) await keepProof(print, address);
      bench.announce(w.copied(made.job.title));
      return;
    }
    await makeRoom(bench, keeping);
    putOn(bench, keeping, made, null, made);
    location.hash = 'forms';
  };
  const putAway = (one: KeptPrint) => async (): Promise<void> => {
    await keeper.putAway(one.print, true);
    bench.announce(w.gone(one.job.title));
  };
  return (
    <section class="wall" aria-label={w.title}>
      <div class="row">
        <h2>{w.titleOf(hung.length)}</h2>
        {onNew && (
          <button type="button" class="button button-line" onClick={onNew}>
            {w.newPrint}
          </button>
        )}
        {prints.length > 0 && (
          <button type="button" class="button button-line" onClick={does(() => exportPrints(bench, keeping, keeper))}>
            {w.exportAll}
          </button>
        )}
        {bench.job.value && (
          <button type="button" class="button button-line" onClick={goToBench}>
            {w.backToBench}
          </button>
        )}
      </div>
      {!bench.job.value && <Announcer bench={bench} />}
      {hung.length === 0 && <p>{w.none}</p>}
      <ul class="wall-prints">
        {hung.map((one) => {
          const { title } = one.job;
          const here = one.print === keeping.print.value && bench.job.value !== null;
          return (
            <li key={one.print} data-print={one.print}>
              <button type="button" class="wall-sheet" aria-label={w.open(title)} title={title} onClick={does(open(one))}>
                <SmallProof one={one} address={proofs.value.get(one.print)} />
              </button>
              <b class="wall-title">{title}</b>
              <span class="wall-says">
                <span class={`stage stage-${one.stage}`}>{w.stage[one.stage]}</span> <Day at={one.keptAt} />
                {here && <b> {w.onBench}</b>}
              </span>
              <div class="wall-ways">
                <button
                  type="button"
                  class="button button-small"
                  aria-label={w.copyOf(title)}
                  title={w.copyOf(title)}
                  onClick={does(make(one, 'copy'))}
                >
                  {w.copy}
                </button>
                <button
                  type="button"
                  class="button button-small"
                  aria-label={w.nextOf(title)}
                  title={w.nextOf(title)}
                  onClick={does(make(one, 'next'))}
                >
                  {w.next}
                </button>
                {!here && (
                  <button type="button" class="button button-small" aria-label={w.putAwayOf(title)} onClick={does(putAway(one))}>
                    {w.putAway}
                  </button>
                )}
              </div>
            </li>
          );
        })}
      </ul>
      {away.length > 0 && (
        <details class="fold wall-away">
          <summary>{w.away(away.length)}</summary>
          <ul>
            {away.map((one) => (
              <li key={one.print} class="row">
                <b>{one.job.title}</b>
                <span>
                  {w.stage[one.stage]} <Day at={one.keptAt} />
                </span>
                <button type="button" class="button button-line" onClick={does(() => keeper.putAway(one.print, false))}>
                  {w.takeOut(one.job.title)}
                </button>
                {thrown.value === one.print ? (
                  <button
                    type="button"
                    class="button button-strong"
                    onClick={does(async () => {
                      await keeper.dropPrint(one.print);
                      bench.announce(w.thrown(one.job.title));
                    })}
                  >
                    {w.throwSure(one.job.title)}
                  </button>
                ) : (
                  <button
                    type="button"
                    class="button button-line"
                    onClick={() => {
                      thrown.value = one.print;
                    }}
                  >
                    {w.throwAway(one.job.title)}
                  </button>
                )}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function goToBench(): void {
  location.hash = 'laydown';
}

/** Its proof; a sheet with nothing on it while there is none. */
function SmallProof({ one, address }: { readonly one: KeptPrint; readonly address: string | undefined }) {
  const { widthMm, heightMm } = one.job.image;
  return (
    <span class="wall-proof" style={{ '--ratio': String(widthMm / heightMm) }}>
      {address !== undefined && <img src={address} alt="" width={widthMm} height={heightMm} />}
    </span>
  );
}

function Day({ at }: { readonly at: number }) {
  const when = new Date(at);
  const place = navigator.language.startsWith(language.value) ? navigator.language : language.value;
  return <time dateTime={when.toISOString()}>{when.toLocaleDateString(place, { day: 'numeric', month: 'short', year: 'numeric' })}</time>;
}
