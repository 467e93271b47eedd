import { useMemo, useRef } from 'preact/hooks';
import type { Box } from '../../../core/form/index.ts';
import { sayLength } from '../../ui/fields/units.ts';
import { step, words } from '../../store/words.ts';
import type { Bench } from '../../store/bench.ts';
import type { ShownPlan } from '../../engine/protocol.ts';
import { Marker } from '../../ui/screen/Marker.tsx';
import { regionPath } from '../../ui/region-path.ts';
import { tidy, withPart } from './edits.ts';
import { PartHandles } from './place/PartHandles.tsx';
import { PartShape } from './place/PartShape.tsx';
import { imageBox } from './place/place.ts';
import { linesOf, partBox, reachPx, snapBox, type SnapLines } from './place/snap.ts';
import { catching, draft, inHand, measuring, met, takePart } from './state.ts';

/** The sheet, its image, and its stops, in mm from the image's top left corner. */
export interface Ground {
  readonly sheet: Box | null;
  readonly stops: readonly Box[];
  readonly whole: Box;
}

export function groundOf(
  plan: ShownPlan | null,
  paperId: string | undefined,
  image: { readonly widthMm: number; readonly heightMm: number },
): Ground {
  const template = plan?.register.stops.find((s) => s.paperId === paperId)?.template;
  if (!template) return { sheet: null, stops: [], whole: { minX: -12, minY: -12, maxX: image.widthMm + 12, maxY: image.heightMm + 12 } };
  const box = (r: { xMm: number; yMm: number; widthMm: number; heightMm: number }): Box => {
    const minX = r.xMm - template.image.xMm,
      minY = r.yMm - template.image.yMm;
    return { minX, minY, maxX: minX + r.widthMm, maxY: minY + r.heightMm };
  };
  const sheet = box(template.sheet),
    stops = template.stops.map(box);
  const all = [sheet, ...stops];
  const edge = 4;
  return {
    sheet,
    stops,
    whole: {
      minX: Math.min(...all.map((b) => b.minX)) - edge,
      minY: Math.min(...all.map((b) => b.minY)) - edge,
      maxX: Math.max(...all.map((b) => b.maxX)) + edge,
      maxY: Math.max(...all.map((b) => b.maxY)) + edge,
    },
  };
}

interface Props {
  readonly bench: Bench;
  readonly cutId: string | null;
  readonly ground: Ground;
  readonly pxPerMm: number;
  readonly paperColour: string;
  /** The print is shown below (a canvas), so the sheet lets it through. */
  readonly clear: boolean;
}

/** Sheet, stops and image; every other cut faintly; the cut in hand as its stencil would open; its forms to take hold of. */
export function SheetDrawing({ bench, cutId, ground, pxPerMm, paperColour, clear }: Props) {
  const layer = useRef<SVGGElement>(null);
  const w = words().forms;
  const job = bench.job.value!;
  const plan = bench.plan.value;
  const cut = job.cuts.find((c) => c.id === cutId);
  const formOf = (id: string) => plan?.forms.find((f) => f.id === id);
  const { part: heldIndex } = inHand.value;
  const heldPart = heldIndex === null ? undefined : cut?.parts[heldIndex];
  const heldForm = heldPart && formOf(heldPart.form);
  const image = imageBox(job.image);

  const linesWithout = useMemo(
    () => (index: number) => (): SnapLines => {
      const others = job.cuts.flatMap((c) =>
        c.parts.flatMap((p, i) => {
          const form = (c.id === cutId && i === index) || p.repeat?.kind === 'scatter' ? undefined : formOf(p.form);
          return form ? [partBox(form, p)] : [];
        }),
      );
      return linesOf([image, ...(ground.sheet ? [ground.sheet] : []), ...ground.stops, ...others]);
    },
    [job.cuts, plan?.forms, ground, cutId],
  );

  const rect = (b: Box) => ({ x: b.minX, y: b.minY, width: b.maxX - b.minX, height: b.maxY - b.minY });
  const ends = measuring.value;
  const around = heldPart?.repeat?.kind === 'around' ? heldPart.repeat : null;
  return (
    <g ref={layer} class={`sheet-layer${draft.value ? ' carrying' : ''}${clear ? ' over-print' : ''}`}>
      <defs>
        {plan?.forms.map((form) => (
          <path key={form.id} id={`form-${form.id}`} class="form-path" fill-rule="evenodd" d={regionPath(form.region)} />
        ))}
        <clipPath id="image-clip">
          <rect {...rect(image)} />
        </clipPath>
      </defs>
      <g
        onPointerDown={(e) => {
          if (e.button === 0) takePart(null);
        }}
      >
        <rect class="ground" {...rect(ground.whole)} />
        {ground.stops.map((stop, i) => (
          <rect key={i} class="ground-stop" {...rect(stop)}>
            <title>{w.stops}</title>
          </rect>
        ))}
        {!clear && <rect class="sheet-paper" {...rect(ground.sheet ?? image)} style={{ fill: paperColour }} />}
        {ground.sheet && <rect class="ground-edge" {...rect(ground.sheet)} />}
        {!clear &&
          plan?.cuts
            .filter((c) => c.id !== cutId)
            .map((c) => <path key={c.id} class="cut-other" fill-rule="evenodd" d={regionPath(c.region)} clip-path="url(#image-clip)" />)}
        {plan?.cuts
          .filter((c) => c.id === cutId)
          .map((c) => (
            <g key={c.id} class="cut-held">
              <path class="cut-fill" fill-rule="evenodd" d={regionPath(c.region)} clip-path="url(#image-clip)" />
              <path class="cut-halo" d={regionPath(c.region)} />
              <path class="cut-line" d={regionPath(c.region)} />
            </g>
          ))}
        <rect class="image-edge" {...rect(image)}>
          <title>{w.imageEdge}</title>
        </rect>
      </g>
      {cut?.parts.map((part, index) => {
        const form = formOf(part.form);
        return (
          form && (
            <PartShape
              key={`${cut.id}:${index}`}
              bench={bench}
              cutId={cut.id}
              index={index}
              part={part}
              form={form}
              ground={layer}
              lines={linesWithout(index)}
            />
          )
        );
      })}
      {met.value.x !== null && <path class="snap-line" d={`M${met.value.x} ${ground.whole.minY}V${ground.whole.maxY}`} />}
      {met.value.y !== null && <path class="snap-line" d={`M${ground.whole.minX} ${met.value.y}H${ground.whole.maxX}`} />}
      {cut && heldPart && heldForm && heldIndex !== null && (
        <>
          {heldPart.repeat?.kind !== 'scatter' && (
            <PartHandles
              bench={bench}
              cutId={cut.id}
              index={heldIndex}
              part={heldPart}
              form={heldForm}
              ground={layer}
              pxPerMm={pxPerMm}
              whole={ground.whole}
            />
          )}
          {around && (
            <Marker
              at={around.centreMm}
              label={w.centre}
              ground={layer}
              pxPerMm={pxPerMm}
              onMove={(to) =>
                bench.edit(
                  step('repeatForm', heldForm.name),
                  (j) => withPart(j, cut.id, heldIndex, { repeat: { ...around, centreMm: [tidy(to[0]), tidy(to[1])] } }),
                  { mark: `centre:${cut.id}:${heldIndex}` },
                )
              }
              onEnd={() => bench.settle()}
            />
          )}
        </>
      )}
      {ends && (
        <g class="measuring">
          <path class="measure-halo" d={`M${ends[0].join(' ')}L${ends[1].join(' ')}`} />
          <path class="measure-line" d={`M${ends[0].join(' ')}L${ends[1].join(' ')}`} />
          {ends.map((end, i) => (
            <Marker
              key={i}
              at={end}
              label={w.measureEnd(i + 1)}
              ground={layer}
              pxPerMm={pxPerMm}
              onMove={(to, by) => {
                const caught =
                  by === 'pointer' && catching.peek()
                    ? snapBox({ minX: to[0], maxX: to[0], minY: to[1], maxY: to[1] }, linesWithout(-1)(), reachPx / pxPerMm)
                    : null;
                met.value = { x: caught?.x ?? null, y: caught?.y ?? null };
                const put = [to[0] + (caught?.dxMm ?? 0), to[1] + (caught?.dyMm ?? 0)] as const;
                measuring.value = i === 0 ? [put, ends[1]] : [ends[0], put];
              }}
              onEnd={(_to, by) => {
                met.value = { x: null, y: null };
                if (by === 'key') bench.announce(sayMeasure(measuring.peek(), job.units));
              }}
            />
          ))}
        </g>
      )}
    </g>
  );
}

export function sayMeasure(ends: typeof measuring.value, units: 'mm' | 'in'): string {
  if (!ends) return '';
  const dx = Math.abs(ends[1][0] - ends[0][0]),
    dy = Math.abs(ends[1][1] - ends[0][1]);
  const say = (mm: number): string => sayLength(mm, units);
  return words().forms.measured(say(Math.hypot(dx, dy)), say(dx), say(dy));
}
