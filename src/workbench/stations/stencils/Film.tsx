import { filmBands, filmSays, type WithTones } from '../../../core/asks/index.ts';
import type { Plan } from '../../../core/plan/index.ts';
import { say } from '../../../words/one-language.ts';
import { useSignal } from '@preact/signals';
import type { FilmFormat } from '../../../packet/index.ts';
import { faultsOf } from '../../engine/faults.ts';
import type { Bench } from '../../store/bench.ts';
import { download } from '../../store/keep/files.ts';
import { language, told, words } from '../../store/words.ts';
import { CountField } from '../../ui/fields/CountField.tsx';
import { PlaneCanvas } from '../../ui/PlaneCanvas.tsx';
import { ToneLook } from './ToneLook.tsx';
import { Exposure, Wedge } from './Wedge.tsx';

type Layer = Plan['layers'][number];

/** No wider on the screen than this: what the film covers, as grey. */
const widestPx = 900;

/** A run of tone is not cut: its film, and how it stands on the screen. */
export function Film({
  bench,
  plan,
  layer,
}: {
  readonly bench: Bench;
  readonly plan: Pick<Plan, 'codes' | 'layers' | 'press' | 'fromArm'> & WithTones;
  readonly layer: Layer & { readonly tone: NonNullable<Layer['tone']> };
}) {
  const { width, height } = plan.codes;
  const saver = useSaver(bench, layer.id);
  const test = { bench, plan, layer, busy: saver.busy.value, save: (what: 'wedge' | 'strip'): void => void saver.save('pdf', what) };
  return (
    <>
      <div class="film-side">
        <PlaneCanvas class="film-plane" plane={layer.tone.plane} width={width} height={height} widestPx={widestPx} label={layer.name} />
        <ToneLook bench={bench} plan={plan} />
      </div>
      <div class="stencils-beside">
        <section class="beside" aria-labelledby="film">
          <h2 id="film">{layer.name}</h2>
          {filmSays(plan, layer).map((one, i) => (
            <p key={i}>{told(one)}</p>
          ))}
          <p>{told(say('halftone.filmsIntro'))}</p>
          <p>{told(say('halftone.filmsWedge'))}</p>
          <SaveFilm saver={saver} />
          {plan.layers.length > 1 && <p>{told(say('halftone.toneRegister'))}</p>}
          {filmBands(plan)
            .slice(0, 4)
            .map((one, i) => (
              <p key={i}>{told(one)}</p>
            ))}
          <p>
            <b>{told(say('halftone.filmCaution'))}</b>
          </p>
        </section>
        <Exposure {...test} />
        <Wedge {...test} />
      </div>
    </>
  );
}

const kinds: Readonly<Record<FilmFormat, string>> = { png: 'image/png', tiff: 'image/tiff', pdf: 'application/pdf' };

/** Saves films of a run as files, at the resolution of the printer that makes them. */
function useSaver(bench: Bench, layerId: string) {
  const dpi = useSignal(1200);
  const mirrored = useSignal(false);
  const busy = useSignal(false);
  const save = async (format: FilmFormat, what: 'image' | 'wedge' | 'strip'): Promise<void> => {
    bench.refuse(null);
    busy.value = true;
    try {
      await bench.upToDate();
      const ask = { layerId, what, format, dpi: dpi.value, mirrored: mirrored.value, language: language.value };
      const file = await bench.ask('film', ask);
      download(file.bytes, file.path, kinds[format]);
      bench.announce(words().stencils.saved(file.path));
    } catch (error) {
      bench.refuse(faultsOf(error));
    } finally {
      busy.value = false;
    }
  };
  return { dpi, mirrored, busy, save };
}

function SaveFilm({ saver }: { readonly saver: ReturnType<typeof useSaver> }) {
  const w = words().stencils;
  const { dpi, mirrored, busy, save } = saver;
  return (
    <>
      <div class="fields">
        <CountField label={w.filmDpi} value={dpi.value} min={72} max={5080} digits={0} unit="dpi" onSet={(v) => (dpi.value = v)} />
      </div>
      <label class="tick">
        <input type="checkbox" checked={mirrored.value} onChange={(e) => (mirrored.value = e.currentTarget.checked)} />
        <span>{w.filmMirrored}</span>
      </label>
      <div class="row" role="group" aria-label={w.filmSave}>
        {(['pdf', 'png', 'tiff'] as const).map((format) => (
          <button key={format} type="button" class="button button-line" disabled={busy.value} onClick={() => void save(format, 'image')}>
            {w.filmAs(format.toUpperCase())}
          </button>
        ))}
      </div>
      {busy.value && <p role="status">{w.filmMaking}</p>}
    </>
  );
}
