import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { potsOf } from '../../../core/asks/index.ts';
import type { JobPicture } from '../../../core/job/index.ts';
import { sayMinutes, saySize } from '../../ui/fields/units.ts';
import type { Bench } from '../../store/bench.ts';
import { Parts } from '../../ui/Parts.tsx';
import { sayDelta } from '../../ui/fields/format.ts';
import { words } from '../../store/words.ts';
import type { StationProps } from '../station.ts';
import { ChoosePicture } from './ChoosePicture.tsx';
import { bringPicture } from './edits.ts';
import { KnifePart } from './result/KnifePart.tsx';
import { LayersPart } from './result/LayersPart.tsx';
import { PicturePart } from './PicturePart.tsx';
import { TonePart } from './result/TonePart.tsx';
import { LinesPart } from './result/LinesPart.tsx';
import { ResultPart } from './result/ResultPart.tsx';
import { sayKnife } from './say.ts';
import { followPicture, inHand, isStale, making, openPart, prepare, reading, unreadable } from './state.ts';

/** The hand has come to rest: what would be made now is sketched ahead. */
const restMs = 60;

/** A picture into stencils: the picture, runs and pots, the knife, the print. */
export function PictureView({ bench }: StationProps) {
  const w = words().picture;
  const over = useSignal(false);
  const job = bench.job.value;
  const picture = job?.picture;
  const bytes = picture && bench.attachments.value.get(picture.file);
  const isReading = reading.value;
  useEffect(() => {
    void followPicture(bench);
  }, [bytes, isReading]);
  useEffect(() => {
    const timer = setTimeout(() => prepare(bench), restMs);
    return () => clearTimeout(timer);
  }, [inHand.value, job, bench.paper.value, making.value?.state]);
  if (!job) return null;

  const drop = (e: DragEvent): void => {
    over.value = false;
    const file = [...(e.dataTransfer?.files ?? [])].find((f) => !f.name.endsWith('.laydown'));
    if (!file) return;
    e.preventDefault();
    e.stopPropagation();
    void bringPicture(bench, file);
  };
  const read = inHand.value !== null && inHand.value.bytes === bytes ? inHand.value.read : null;
  const pots = potsOf(job);
  const props = { bench, job, picture: picture!, read: read! };
  const knife: JobPicture['knife'] = picture?.knife ?? {};
  const budget = [
    knife.metres !== undefined && sayKnife(knife.metres, job.units),
    knife.minutes !== undefined && sayMinutes(knife.minutes),
    knife.pieces !== undefined && w.knifePieces(knife.pieces),
  ]
    .filter(Boolean)
    .join(', ');
  const made = making.value;
  return (
    <div
      class={`picture${over.value ? ' picture-over' : ''}`}
      onDrop={drop}
      onDragOver={(e) => {
        e.preventDefault();
        over.value = true;
      }}
      onDragLeave={() => {
        over.value = false;
      }}
    >
      {!picture || !bytes || unreadable.value === bytes ? (
        <NoPicture bench={bench} lacking={!picture ? null : bytes ? w.unreadable : w.missing} />
      ) : !read ? (
        <p class="picture-reading" role="status">
          {w.reading}
        </p>
      ) : (
        <Parts
          label={w.parts}
          at={openPart}
          parts={[
            {
              id: 'picture',
              title: w.picturePart,
              look: false,
              says: w.pictureSays(String(read.width), String(read.height)),
              view: () => <PicturePart {...props} />,
            },
            {
              id: 'layers',
              title: w.layersPart,
              look: pots.length === 0 || (picture.cutPairs && picture.layers % 2 === 1),
              says: w.layersSays(
                picture.layers,
                picture.pots ? picture.pots.filter((id) => pots.some((p) => p.id === id)).length : pots.length,
              ),
              view: () => <LayersPart {...props} pots={pots} />,
            },
            {
              id: 'knife',
              title: w.knifePart,
              look: false,
              says: budget || (knife.priceMm === undefined ? w.knifeFree : w.knifePrice),
              view: () => <KnifePart {...props} />,
            },
            {
              id: 'result',
              title: w.resultPart,
              look: made !== null && isStale(bench, made),
              says: made?.result
                ? `ΔE ${sayDelta(made.result.figures.inRegister.mean)}, ${sayKnife(made.result.figures.knifeMetres, job.units)}`
                : made
                  ? w.knowsWorking(Math.round(made.share * 100))
                  : w.notMade,
              view: () => <ResultPart {...props} />,
            },
            {
              id: 'tone',
              title: w.tonePart,
              look: false,
              says: w.toneSays,
              view: () => <TonePart {...props} pots={pots} />,
            },
            {
              id: 'lines',
              title: w.linesPart,
              look: false,
              says: w.linesSays,
              view: () => <LinesPart {...props} pots={pots} />,
            },
          ]}
        />
      )}
    </div>
  );
}

function NoPicture({ bench, lacking }: { readonly bench: Bench; readonly lacking: string | null }) {
  const w = words().picture;
  const { image, units } = bench.job.value!;
  return (
    <section class="picture-none">
      <h2>{w.emptyTitle}</h2>
      {lacking && (
        <p class="needs-line">
          {lacking} {w.missingAdvice}
        </p>
      )}
      <p>{w.emptyText}</p>
      <ChoosePicture bench={bench} strong>
        {w.choose}
      </ChoosePicture>
      <p class="field-note">
        {w.formats} {w.imageSize(saySize(image.widthMm, image.heightMm, units))}
      </p>
    </section>
  );
}
