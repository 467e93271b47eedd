import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Problem } from '../../../../core/problem.ts';
import { name as asName, say } from '../../../../words/one-language.ts';
import { faultsOf } from '../../../engine/faults.ts';
import type { Answer, ShownPaper, ShownPlan } from '../../../engine/protocol.ts';
import type { Bench } from '../../../store/bench.ts';
import { knownCameras } from '../../../store/keep/lens.ts';
import { words } from '../../../store/words.ts';
import { cameraName } from '../../../ui/camera-name.ts';
import { FileButton } from '../../../ui/fields/FileButton.tsx';
import { ProblemList } from '../../../ui/ProblemList.tsx';
import { ProofCanvas } from '../../../ui/proof/ProofCanvas.tsx';
import { Wipe } from '../../../ui/proof/Wipe.tsx';
import { RgbCanvas } from '../../../ui/RgbCanvas.tsx';
import { useOpened } from '../../../ui/screen/opened.ts';
import { Corners } from './Corners.tsx';
import { leavePrintPhoto, photoWipe, takePrintPhoto, type PrintPhotograph } from './photograph.ts';
import { SeenOverlaps } from './SeenOverlaps.tsx';

interface Props {
  readonly bench: Bench;
  readonly plan: ShownPlan;
  readonly paper: ShownPaper;
  readonly photo: PrintPhotograph;
}

/** Where one asks for it: a photograph, to be laid beside the proof. */
export function PhotoButton({ another = false }: { readonly another?: boolean }) {
  const w = words().overlaps;
  return (
    <div>
      <FileButton
        label={another ? w.photoAnother : w.photo}
        {...(another ? {} : { hint: w.photoHow })}
        accept="image/*"
        onFile={takePrintPhoto}
      />
    </div>
  );
}

/** A photograph of the printed sheet: squared up by its corners, beside the proof with a wipe, and its colours as readings. */
export function PrintPhoto({ bench, plan, paper, photo }: Props) {
  const w = words().overlaps;
  const { of, corners } = photo;
  const answer = useSignal<Answer<'printPhoto'> | null>(null);
  const refused = useSignal<readonly Problem[]>([]);
  const busy = useSignal(false);
  const sent = useRef(false);
  const wanted = useRef(0);

  const read = async (): Promise<void> => {
    const mine = ++wanted.current;
    busy.value = true;
    try {
      await bench.upToDate();
      const first = !sent.current;
      sent.current = true;
      const found = await bench.ask('printPhoto', {
        id: photo.id,
        name: photo.name,
        paperId: paper.id,
        of: of.value,
        ...(corners.value ? { corners: corners.value } : {}),
        cameras: knownCameras(bench.job.value!),
        ...(first ? { bytes: photo.bytes } : {}),
      });
      if (mine !== wanted.current) return;
      refused.value = [];
      answer.value = found;
      if (found.corners) corners.value = found.corners;
      else if (!corners.value) {
        // Nothing was found: four corners to begin from, most likely of the image.
        const { widthPx: x, heightPx: y } = found;
        of.value = 'image';
        corners.value = [
          [x * 0.15, y * 0.15],
          [x * 0.85, y * 0.15],
          [x * 0.85, y * 0.85],
          [x * 0.15, y * 0.85],
        ];
      }
    } catch (error) {
      if (mine === wanted.current) refused.value = faultsOf(error, say('where.file', { file: asName(photo.name) }));
    } finally {
      if (mine === wanted.current) busy.value = false;
    }
  };
  // What is foreseen changes with the Plan, and so does what the photograph is held against.
  useEffect(() => {
    void read();
  }, [plan, paper.id]);
  const section = useOpened();

  const found = answer.value;
  const squared = found?.squared;
  return (
    <section
      class="print-photo"
      ref={section}
      tabIndex={-1}
      aria-labelledby="print-photo-title"
      onKeyDown={(e) => {
        if (e.key !== 'Escape' || e.defaultPrevented) return;
        e.preventDefault();
        leavePrintPhoto();
      }}
    >
      <div class="print-photo-head">
        <h2 id="print-photo-title">{w.photoTitle}</h2>
        <div class="row">
          <PhotoButton another />
          <button type="button" class="button button-line" onClick={leavePrintPhoto}>
            {w.photoClose}
          </button>
        </div>
      </div>
      <p role="status" class={busy.value ? '' : 'unseen'}>
        {busy.value ? w.photoReading : ''}
      </p>
      {refused.value.length > 0 && (
        <div role="alert">
          <ProblemList problems={refused.value} />
        </div>
      )}
      <div class="print-photo-two">
        {found && corners.value && (
          <Corners
            photo={photo}
            widthPx={found.widthPx}
            heightPx={found.heightPx}
            corners={corners}
            of={of.value}
            onOf={(next) => {
              of.value = next;
              // The other outline lies where the job says, until it is moved.
              if (found.outlines) corners.value = found.outlines[next];
              void read();
            }}
            onEnd={() => void read()}
          />
        )}
        {squared && (
          <div class="print-photo-wipe">
            <Wipe
              share={photoWipe}
              ratio={plan.job.image.widthMm / plan.job.image.heightMm}
              over={<ProofCanvas bench={bench} plan={plan} paper={paper} label={w.photoProof(paper.name)} />}
              under={<RgbCanvas class="proof-canvas" {...squared} label={w.photoSquared(paper.name)} />}
            />
            <p>
              {w.photoSides} {found?.camera && words().forms.lensKept(cameraName(found.camera))}
            </p>
          </div>
        )}
      </div>
      {found && found.problems.length > 0 && <ProblemList problems={found.problems} />}
      {found && <SeenOverlaps bench={bench} plan={plan} paper={paper} found={found} />}
    </section>
  );
}
