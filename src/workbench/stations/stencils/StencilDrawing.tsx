import { useEffect, useRef } from 'preact/hooks';
import type { JobLayer } from '../../../core/job/index.ts';
import type { PlannedLayer } from '../../../core/plan/index.ts';
import { ProblemError } from '../../../core/problem.ts';
import { step, told, words } from '../../store/words.ts';
import type { Bench } from '../../store/bench.ts';
import { arrowStep, carry, mmAt, type Mm } from '../../ui/screen/drag.ts';
import { sayDelta } from '../../ui/fields/format.ts';
import { sayLength } from '../../ui/fields/units.ts';
import { Marker } from '../../ui/screen/Marker.tsx';
import { regionPath } from '../../ui/region-path.ts';
import { pinOf, withForbidden, withoutPin, withPin } from './edits.ts';
import { bridgeAt, carriedBy, fromBelow, placing } from './state.ts';

type PlannedBridge = PlannedLayer['stencil']['bridges'][number];

interface Props {
  readonly bench: Bench;
  readonly layer: JobLayer;
  readonly planned: PlannedLayer;
  readonly pxPerMm: number;
  /** Only the picture: nothing to take hold of, no numbers. */
  readonly still?: boolean;
}

export const middleOf = (b: PlannedBridge): Mm => [(b.from[0] + b.to[0]) / 2, (b.from[1] + b.to[1]) / 2];

/** The bridge in hand: the one whose middle lies nearest to where it was last. */
export function bridgeInHand(planned: PlannedLayer): PlannedBridge | null {
  const at = bridgeAt.value;
  if (!at) return null;
  let best: PlannedBridge | null = null,
    least = 15;
  for (const b of planned.stencil.bridges) {
    const [x, y] = middleOf(b);
    const d = Math.hypot(x - at[0], y - at[1]);
    if (d < least) [best, least] = [b, d];
  }
  return best;
}

/** One bridge is laid at a time: the next starts from where it came to lie. */
let laying = false;
let resting: ReturnType<typeof setTimeout> | undefined;
/** After the last arrow key the bridge is laid. */
const restMs = 300;

/** Asks where a bridge at a place would lie and puts it there; says what stands in the way. */
async function layBridge(
  bench: Bench,
  layer: JobLayer,
  index: number,
  at: Mm,
  what: 'pinBridge' | 'addBridge',
  mark?: string,
): Promise<void> {
  if (laying) return;
  laying = true;
  try {
    await bench.upToDate();
    const way = await bench.ask('bridge', { layerId: layer.id, atMm: at });
    bridgeAt.value = [(way.fromMm[0] + way.toMm[0]) / 2, (way.fromMm[1] + way.toMm[1]) / 2];
    bench.edit(
      step(what, layer.name),
      (job) => withPin(job, layer.id, index, { fromMm: [...way.fromMm], toMm: [...way.toMm] }),
      mark === undefined ? {} : { mark },
    );
    bench.announce(words().stencils.bridgeLaid);
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    bench.announce(`${told(error.problems[0].message)} ${told(error.problems[0].advice)}`);
  } finally {
    laying = false;
    carriedBy.value = null;
  }
}

export function forbidAt(bench: Bench, layer: JobLayer, at: Mm, radiusMm: number, pin: number): void {
  bench.edit(step('forbidBridge', layer.name), (job) =>
    withForbidden(job, layer.id, [Math.round(at[0] * 10) / 10, Math.round(at[1] * 10) / 10], radiusMm, pin),
  );
  bench.announce(words().stencils.forbidden);
  bridgeAt.value = null;
}

/** One stencil as it lies on the bench: paper light, openings dark; bridges, loose pieces and thin places marked on it. */
export function StencilDrawing({ bench, layer, planned, pxPerMm, still = false }: Props) {
  const w = words().stencils;
  const ground = useRef<SVGGElement>(null);
  const { stencil } = planned;
  const { image, units } = bench.job.value!;
  const { sheet } = stencil;
  const px = 1 / pxPerMm;
  const flip = fromBelow.value && !still;
  const inHand = still ? null : bridgeInHand(planned);
  const put = placing.value;

  const place = (e: PointerEvent): void => {
    if (!put || !ground.current || e.button !== 0) return;
    finish(mmAt(ground.current, e.clientX, e.clientY));
  };
  const finish = (at: Mm): void => {
    const what = placing.peek();
    placing.value = null;
    if (what?.for === 'add') void layBridge(bench, layer, -1, at, 'addBridge');
    else if (what) forbidAt(bench, layer, at, 8, -1);
  };
  return (
    <g
      ref={ground}
      transform={flip ? `translate(${image.widthMm} 0) scale(-1 1)` : undefined}
      class={put ? 'placing' : undefined}
      onPointerDown={place}
    >
      <rect class="stencil-sheet" x={sheet.minX} y={sheet.minY} width={sheet.maxX - sheet.minX} height={sheet.maxY - sheet.minY} />
      <path class="stencil-prints" fill-rule="evenodd" d={regionPath(stencil.prints)} />
      <rect class="image-edge" x="0" y="0" width={image.widthMm} height={image.heightMm} />
      {stencil.loosePieces.map((piece) => (
        <g key={piece.number} class="loose">
          <path class="loose-piece stencil-line" fill-rule="evenodd" d={regionPath(piece.region)} />
          {!still && <Tag at={piece.at} pxPerMm={pxPerMm} flip={flip} text={String(piece.number)} kind="number" />}
        </g>
      ))}
      {!still &&
        stencil.islands
          .filter((i) => i.handled === 'dropped')
          .map((island, i) => <path key={i} class="dropped stencil-line" d={regionPath(island.region)} />)}
      {!still &&
        layer.noBridge?.map((no, i) => (
          <g key={i} class="no-bridge">
            <circle class="stencil-line no-bridge-ring" cx={no.atMm[0]} cy={no.atMm[1]} r={no.radiusMm} />
            <path
              class="stencil-line no-bridge-ring"
              d={`M${no.atMm[0] - no.radiusMm * 0.7} ${no.atMm[1] - no.radiusMm * 0.7}l${no.radiusMm * 1.4} ${no.radiusMm * 1.4}`}
            />
          </g>
        ))}
      {!still &&
        stencil.bridges.map((bridge) => {
          const pin = pinOf(layer, bridge);
          return (
            <BridgeShape
              key={pin >= 0 ? `pin-${pin}` : bridge.id}
              bench={bench}
              layer={layer}
              bridge={bridge}
              pin={pin}
              held={inHand === bridge}
              pxPerMm={pxPerMm}
              flip={flip}
              ground={ground}
            />
          );
        })}
      {!still &&
        stencil.mends?.map((mend, i) => (
          <path key={i} class={`mend mend-${mend.kind} stencil-line`} fill-rule="evenodd" d={regionPath(mend.region)}>
            <title>{w.mends[mend.kind]}</title>
          </path>
        ))}
      {!still &&
        stencil.certificate.faults.map((fault, i) => (
          <g key={i} class="fault" transform={`translate(${fault.atMm[0]} ${fault.atMm[1]}) scale(${px})`}>
            <title>{w.fault(w.faultKinds[fault.kind], sayLength(fault.widthMm, units, units === 'mm' ? 1 : 3))}</title>
            <circle class="fault-halo" r="13" />
            <circle class="fault-ring" r="13" />
            <path class="fault-ring" d="M-5 -5L5 5M-5 5L5 -5" />
          </g>
        ))}
      {put && !still && (
        <Marker
          at={put.at}
          label={put.for === 'add' ? w.addHere : w.forbidHere}
          ground={ground}
          pxPerMm={pxPerMm}
          onMove={(at) => {
            placing.value = { ...put, at };
          }}
          onEnd={(at, by) => {
            if (by === 'pointer') finish(at);
          }}
          onKey={(e) => {
            if (e.key === 'Enter' || e.key === ' ') {
              e.preventDefault();
              finish(put.at);
            }
            if (e.key === 'Escape') placing.value = null;
          }}
        />
      )}
    </g>
  );
}

interface BridgeProps {
  readonly bench: Bench;
  readonly layer: JobLayer;
  readonly bridge: PlannedBridge;
  readonly pin: number;
  readonly held: boolean;
  readonly pxPerMm: number;
  readonly flip: boolean;
  readonly ground: { readonly current: SVGGElement | null };
}

function BridgeShape({ bench, layer, bridge, pin, held, pxPerMm, flip, ground }: BridgeProps) {
  const w = words().stencils;
  const { units } = bench.job.value!;
  const self = useRef<SVGGElement>(null);
  const at = middleOf(bridge);
  const by = held ? carriedBy.value : null;
  // A bridge that was moved is a new one in the Plan: the keys stay with it.
  useEffect(() => {
    if (held && document.activeElement === document.body) self.current?.focus({ preventScroll: true });
  }, [held]);

  const onKeyDown = (e: KeyboardEvent): void => {
    const move = arrowStep(e);
    if (move) {
      e.preventDefault();
      if (laying) return;
      const [cx, cy] = carriedBy.peek() ?? [0, 0];
      const carried = [cx + (fromBelow.peek() ? -move[0] : move[0]), cy + move[1]] as const;
      carriedBy.value = carried;
      clearTimeout(resting);
      resting = setTimeout(
        () => void layBridge(bench, layer, pin, [at[0] + carried[0], at[1] + carried[1]], 'pinBridge', `bridge:${layer.id}`),
        restMs,
      );
    } else if (e.key === 'Delete' || e.key === 'Backspace') {
      e.preventDefault();
      if (pin >= 0) bench.edit(step('removeBridge', layer.name), (job) => withoutPin(job, layer.id, pin));
      else forbidAt(bench, layer, at, forbidRadius(bridge), pin);
    } else if (e.key === 'Escape') bridgeAt.value = null;
  };
  const onPointerDown = (e: PointerEvent): void => {
    if (!ground.current || placing.peek()) return;
    bridgeAt.value = at;
    (e.currentTarget as SVGElement).focus({ preventScroll: true });
    const from = mmAt(ground.current, e.clientX, e.clientY);
    carry(e, ground.current, {
      onMove(now) {
        carriedBy.value = [now[0] - from[0], now[1] - from[1]];
      },
      onEnd(_now, { moved, cancelled }) {
        const carried = carriedBy.peek();
        if (moved && !cancelled && carried) void layBridge(bench, layer, pin, [at[0] + carried[0], at[1] + carried[1]], 'pinBridge');
        else carriedBy.value = null;
      },
    });
  };
  const cost = bridge.costDeltaE === undefined ? null : sayDelta(bridge.costDeltaE);
  const [ux, uy] = [bridge.to[0] - bridge.from[0], bridge.to[1] - bridge.from[1]];
  const length = Math.hypot(ux, uy) || 1;
  // Its tag stands beside it, square to its run.
  const off = 40 / pxPerMm + bridge.widthMm / 2;
  const tagAt: Mm = [at[0] - (uy / length) * off, at[1] + (ux / length) * off];
  return (
    <g
      ref={self}
      class={`bridge${held ? ' bridge-held' : ''}${bridge.pinned ? ' bridge-pinned' : ''}`}
      data-bridge={bridge.id}
      tabindex={0}
      role="button"
      aria-pressed={held}
      aria-label={w.bridgeLabel(bridge.id, cost, bridge.pinned, sayLength(10, units), sayLength(0.1, units))}
      transform={by ? `translate(${by[0]} ${by[1]})` : undefined}
      onPointerDown={onPointerDown}
      onKeyDown={onKeyDown}
      onFocus={() => {
        bridgeAt.value = at;
      }}
      onBlur={() => bench.settle()}
    >
      <circle class="grip-reach" cx={at[0]} cy={at[1]} r={22 / pxPerMm} />
      <path class="bridge-leader stencil-line" d={`M${at[0]} ${at[1]}L${tagAt[0]} ${tagAt[1]}`} />
      <path class="bridge-shape stencil-line" d={regionPath(bridge.region)} />
      <Tag at={tagAt} pxPerMm={pxPerMm} flip={flip} text={cost ?? bridge.id} kind={bridge.pinned ? 'pinned' : 'cost'} />
    </g>
  );
}

export const forbidRadius = (bridge: PlannedBridge): number => Math.round(Math.max(6, bridge.widthMm * 1.5 + 3));

function Tag({
  at,
  pxPerMm,
  flip,
  text,
  kind,
}: {
  readonly at: Mm;
  readonly pxPerMm: number;
  readonly flip: boolean;
  readonly text: string;
  readonly kind: 'number' | 'cost' | 'pinned';
}) {
  const width = 12 + text.length * 9;
  return (
    <g
      class={`tag tag-${kind}`}
      transform={`translate(${at[0]} ${at[1]}) scale(${(flip ? -1 : 1) / pxPerMm} ${1 / pxPerMm})`}
      aria-hidden="true"
    >
      <rect x={-width / 2} y="-12" width={width} height="24" rx={kind === 'number' ? 12 : 0} />
      <text y="5.5" text-anchor="middle">
        {text}
      </text>
      {kind === 'pinned' && <path class="tag-pin" d={`M${-width / 2} 12h${width}v4h${-width}z`} />}
    </g>
  );
}
