import type { ReadonlySignal } from '@preact/signals';
import { sayArea } from '../../ui/fields/units.ts';
import { Films } from '../../ui/proof/Films.tsx';
import { sayDelta, sayLab, sayPercent } from '../../ui/fields/format.ts';
import { ProofWhy } from '../../ui/proof/ProofWhy.tsx';
import { words } from '../../store/words.ts';
import type { ShownPaper, ShownPlan } from '../../engine/protocol.ts';
import { nameOverlap, shareOf } from './names.ts';
import { swatchOf } from './ramp.ts';

interface Props {
  readonly plan: ShownPlan;
  readonly paper: ShownPaper;
  readonly ramps: Pick<ShownPaper, 'tones'>;
  readonly shown: ReadonlySignal<number | null>;
  readonly held: ReadonlySignal<number | null>;
  /** Which ground of a printed sheet it is looked at on. */
  readonly region: ReadonlySignal<number | null>;
  readonly onLetGo: () => void;
}

/** All that is known of one overlap. Keeps its height, so that the chart below stands still. */
export function Detail({ plan, paper, ramps, shown, held, region, onLetGo }: Props) {
  const w = words().overlaps;
  const found = shown.value === null ? undefined : paper.overlaps.find((o) => o.code === shown.value);
  const ground = region.value === null ? undefined : paper.grounds?.colours[region.value];
  const there = found && ground?.overlaps.find((o) => o.code === found.code);
  const overlap = found && there ? { ...found, ...there, possible: [] } : found;
  if (!overlap)
    return (
      <div class="detail detail-empty">
        <p>{w.point}</p>
      </div>
    );
  const swatch = swatchOf(plan, there ? { tones: null } : ramps, overlap);
  return (
    <div class="detail">
      <span class="detail-swatch" style={{ background: swatch.background }} />
      <div class="detail-text">
        <h2>
          <Films layers={plan.layers} here={overlap.layers} />
          {nameOverlap(plan, overlap)}
          {ground && there && (
            <small>
              <i class="ground-colour" style={{ background: ground.srgb }} /> {w.groundNo(region.value! + 1)}
            </small>
          )}
        </h2>
        {swatch.ramp && <p>{swatch.ramp}</p>}
        <dl>
          <div>
            <dt>{w.lab}</dt>
            <dd>{sayLab(overlap.lab)}</dd>
          </div>
          <div>
            <dt>{w.band}</dt>
            <dd>
              {w.bandWords(overlap.band)}{' '}
              <small>
                {w.bandValue(sayDelta(overlap.band))}, {overlap.measured ? w.measured : w.foreseen}
              </small>
            </dd>
          </div>
          {overlap.possible.length > 1 && (
            <div>
              <dt>{w.possible}</dt>
              <dd>
                <span class="possible-strip" role="img" aria-label={w.possibleWhy} title={w.possibleWhy}>
                  {overlap.possible.map((srgb, i) => (
                    <i key={i} style={{ background: srgb }} />
                  ))}
                </span>
              </dd>
            </div>
          )}
          <div>
            <dt>{w.area}</dt>
            <dd>
              {sayArea(overlap.areaMm2, plan.job.units)} <small>{sayPercent(shareOf(plan, overlap))}</small>
            </dd>
          </div>
          <div>
            <dt>{w.screen}</dt>
            <dd>
              {overlap.srgb} <small>{overlap.inGamut ? w.inGamut : w.outOfGamut}</small>
            </dd>
          </div>
        </dl>
        <ProofWhy plan={plan} />
      </div>
      {held.value !== null && (
        <button type="button" class="button button-small" onClick={onLetGo}>
          {w.letGo}
        </button>
      )}
    </div>
  );
}
