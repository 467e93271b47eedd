import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { mmAt } from '../../ui/screen/drag.ts';
import { Calibrate } from '../../ui/screen/Calibrate.tsx';
import { ProofCanvas } from '../../ui/proof/ProofCanvas.tsx';
import { ZoomBar, ZoomView } from '../../ui/proof/ZoomView.tsx';
import { words } from '../../store/words.ts';
import type { StationProps } from '../station.ts';
import { bringDrawings, isPicture } from './found/bring.ts';
import { CutInHand, CutTiles, TakeCutAway } from './CutShelf.tsx';
import { FormShelf } from './FormShelf.tsx';
import { ImageNumbers } from './place/ImageNumbers.tsx';
import { PartNumbers } from './place/PartNumbers.tsx';
import { photograph, takePhotograph } from './found/photograph.ts';
import { PhotoTrace } from './found/PhotoTrace.tsx';
import { groundOf, sayMeasure, SheetDrawing } from './SheetDrawing.tsx';
import { catching, cutInHand, inHand, measuring, printBelow, shownPxPerMm, zoom } from './state.ts';

/** No canvas is made larger than this; nearer than that it is shown enlarged. */
const mostCanvasPx = 1800;

/** Forms: the true-size sheet with the cut in hand, and beside it the cuts, the forms, and everything as numbers. */
export function FormsView({ bench }: StationProps) {
  const w = words().forms;
  const over = useSignal(false);
  const cutId = useMemo(() => cutInHand(bench), [bench]).value;
  const job = bench.job.value;
  const plan = bench.plan.value;
  const paper = bench.paper.value;
  const ground = useMemo(
    () => groundOf(plan, paper?.id, job?.image ?? { widthMm: 1, heightMm: 1 }),
    [plan?.register, paper?.id, job?.image],
  );
  if (!job) return null;
  const cut = job.cuts.find((c) => c.id === cutId);
  const index = inHand.value.part;
  const part = index === null ? undefined : cut?.parts[index];
  const form = part && plan?.forms.find((f) => f.id === part.form);
  const canPrint = plan !== null && paper !== null && plan.layers.some((l) => l.inkId !== null);
  const clear = printBelow.value && canPrint;

  const drop = (e: DragEvent): void => {
    const files = [...(e.dataTransfer?.files ?? [])].filter((f) => !f.name.endsWith('.laydown'));
    over.value = false;
    if (files.length === 0) return;
    e.preventDefault();
    e.stopPropagation();
    const svg = (e.currentTarget as HTMLElement).querySelector<SVGGElement>('.sheet-layer');
    const onSheet = (e.target as Element).closest('.zoom-view') !== null;
    const picture = files.find(isPicture);
    if (picture) return void takePhotograph(bench, picture);
    void bringDrawings(bench, files, cutId, svg && onSheet ? mmAt(svg, e.clientX, e.clientY) : null);
  };
  const { widthMm, heightMm } = job.image;
  return (
    <div
      class={`forms${over.value ? ' dropping' : ''}`}
      onDrop={drop}
      onDragOver={(e) => {
        e.preventDefault();
        over.value = true;
      }}
      onDragLeave={() => {
        over.value = false;
      }}
    >
      <div class="forms-sheet">
        <ZoomView
          box={ground.whole}
          zoom={zoom}
          shown={shownPxPerMm}
          label={w.sheet}
          below={(pxPerMm) => {
            if (!clear || !plan || !paper) return null;
            const scale = Math.max(1, (Math.max(widthMm, heightMm) * pxPerMm) / mostCanvasPx);
            return (
              <div
                class="print-below"
                style={{
                  left: `${(ground.sheet ? ground.sheet.minX - ground.whole.minX : -ground.whole.minX) * pxPerMm}px`,
                  top: `${(ground.sheet ? ground.sheet.minY - ground.whole.minY : -ground.whole.minY) * pxPerMm}px`,
                  width: `${(ground.sheet ? ground.sheet.maxX - ground.sheet.minX : widthMm) * pxPerMm}px`,
                  height: `${(ground.sheet ? ground.sheet.maxY - ground.sheet.minY : heightMm) * pxPerMm}px`,
                  background: paper.swatch.srgb,
                }}
              >
                <div
                  class="print-image"
                  style={{
                    left: `${-(ground.sheet?.minX ?? 0) * pxPerMm}px`,
                    top: `${-(ground.sheet?.minY ?? 0) * pxPerMm}px`,
                    width: `${(widthMm * pxPerMm) / scale}px`,
                    height: `${(heightMm * pxPerMm) / scale}px`,
                    transform: `scale(${scale})`,
                  }}
                >
                  <ProofCanvas bench={bench} plan={plan} paper={paper} label={words().laydown.proof(paper.name)} />
                </div>
              </div>
            );
          }}
        >
          {(pxPerMm) => (
            <SheetDrawing
              bench={bench}
              cutId={cutId}
              ground={ground}
              pxPerMm={pxPerMm}
              paperColour={paper?.swatch.srgb ?? '#f2f2f2'}
              clear={clear}
            />
          )}
        </ZoomView>
        <div class="forms-bar">
          <ZoomBar zoom={zoom} shown={shownPxPerMm} />
          <div class="row">
            {canPrint && (
              <label class="tick">
                <input
                  type="checkbox"
                  checked={printBelow.value}
                  onChange={(e) => {
                    printBelow.value = e.currentTarget.checked;
                  }}
                />
                <span>{w.printBelow}</span>
              </label>
            )}
            <label class="tick">
              <input
                type="checkbox"
                checked={catching.value}
                onChange={(e) => {
                  catching.value = e.currentTarget.checked;
                }}
              />
              <span>{w.catchOn}</span>
            </label>
            <label class="tick">
              <input
                type="checkbox"
                checked={measuring.value !== null}
                onChange={(e) => {
                  measuring.value = e.currentTarget.checked
                    ? [
                        [widthMm / 4, heightMm / 2],
                        [(widthMm * 3) / 4, heightMm / 2],
                      ]
                    : null;
                }}
              />
              <span>{w.measure}</span>
            </label>
          </div>
          {measuring.value && <output class="measured">{sayMeasure(measuring.value, job.units)}</output>}
        </div>
        <Calibrate units={job.units} />
      </div>
      <div class="forms-beside">
        {photograph.value && <PhotoTrace key={photograph.value.id} bench={bench} photo={photograph.value} />}
        {job.cuts.length === 0 && (
          <section class="first">
            <h2>{w.firstTitle}</h2>
            <p>{w.firstText}</p>
          </section>
        )}
        {job.cuts.length > 0 && <CutTiles bench={bench} cutId={cutId} />}
        {cut && <CutInHand bench={bench} cut={cut} />}
        {cut && part && form && index !== null ? (
          <PartNumbers bench={bench} cutId={cut.id} index={index} part={part} form={form} />
        ) : (
          cut && (
            <p class="num-note">
              {w.nothingInHand} {w.snapNote}
            </p>
          )
        )}
        <FormShelf bench={bench} cutId={cutId} />
        <ImageNumbers bench={bench} />
        {cut && <TakeCutAway bench={bench} cut={cut} />}
      </div>
    </div>
  );
}
