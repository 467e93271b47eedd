import { emptyRegion, regionArea, regionBox, mapRegion, takeAway, type Box, type Region } from '../../../form/index.ts';
import type { Job } from '../../../job/index.ts';
import type { Codes } from '../../../print/index.ts';
import type { CostRaster, InTheWay, LocalLoss, Material, Offer, PointMm, Spot, Stencil, StencilRequest } from '../../../stencil/index.ts';
import { islandsBeside, makeStencil } from '../../../stencil/index.ts';
import { area, asWritten, deltaE, length, lengths, say, share, type Saying } from '../../../../words/say.ts';
import { problem, type Problem } from '../../../problem.ts';
import { meanOver } from './costs.ts';

/** Sizes, smallest first: the least that lets the stencil hold is offered. Two or three are tried: what holds at one size mostly holds larger. */
const scales: readonly number[] = [1.1, 1.25, 1.5, 2, 3];
/** So many openings or details are offered one by one; beyond that only all that is too fine together. */
const mostSingly = 3;
/**
 * Work in all, with that of the refusal, counted as a stencil's effort is: further ways out are tried as long as some is left. While
 * nothing is found there is more, and each try has at least so much; the surest way out has what it needs,
 * and the next, in which islands go as well, less than half of that.
 */
const mostEffort = 100_000,
  lastEffort = 280_000,
  leastEffort = 15_000,
  surestEffort = 120_000,
  againEffort = 40_000;
/** So far about each fault, where nearer to it would take too much work, and about so many. */
const aroundMm = 8,
  mostAround = 150;
/** So many times islands beside what is left go too. */
const mostAgain = 2;

export type OfferGround = Omit<StencilRequest, 'cost' | 'place'> & { readonly cost?: CostRaster };

/**
 * Ways out for a stencil that does not hold or loses much, least loss first: close what stands in the way, leave details out, choose a
 * firmer material, make the drawing larger. Each is offered only where the stencil made with it holds.
 */
export function offersFor(asked: OfferGround, materials: readonly Material[], refused: Stencil, make: Make = makeStencil): Offer[] {
  return new Tries(asked, refused, make).offers(materials);
}

/** How a stencil is made; another in tests, which count. */
type Make = (request: StencilRequest) => Stencil;

/** In the order in which they are shown. */
type Rank = 'here' | 'close' | 'drop' | 'fine' | 'firmer' | 'larger';
const ranks: readonly Rank[] = ['here', 'close', 'drop', 'fine', 'firmer', 'larger'];

class Tries {
  private effort: number;
  private readonly found: { readonly rank: Rank; readonly offer: Offer }[] = [];
  private readonly asked: OfferGround;
  private readonly refused: Stencil;
  /** One circle about all of it. */
  private readonly all: Spot;

  private readonly make: Make;

  constructor(asked: OfferGround, refused: Stencil, make: Make) {
    this.make = make;
    this.asked = asked;
    this.refused = refused;
    this.effort = refused.effort;
    const box = regionBox(asked.shape);
    this.all = {
      atMm: [round((box.minX + box.maxX) / 2), round((box.minY + box.maxY) / 2)],
      withinMm: round(Math.hypot(box.maxX - box.minX, box.maxY - box.minY) / 2 + 1),
    };
  }

  /** The surest and quickest are tried first: the finer a drawing, the fewer. */
  offers(materials: readonly Material[]): Offer[] {
    const { refused } = this;
    if (!refused.certificate.holds || refused.prints.rings.length === 0) {
      if (refused.localLoss) this.here(refused.localLoss);
      this.allFine();
      if (!refused.localLoss && this.goesOn()) this.around();
      this.oneKind('close', refused.inTheWay ?? []);
      this.oneKind('drop', refused.mayGo ?? []);
    }
    this.firmer(materials);
    this.larger();
    // Who may leave out the paper alone need not close openings as well.
    const less = this.found.some(({ rank }) => rank === 'drop');
    return this.found
      .filter(({ rank }) => !(rank === 'fine' && less))
      .sort((a, b) => ranks.indexOf(a.rank) - ranks.indexOf(b.rank))
      .map(({ offer }) => offer);
  }

  /** Is there enough work left for another try? */
  private goesOn(): boolean {
    return this.effort + leastEffort <= (this.found.length === 0 ? lastEffort : mostEffort);
  }

  private made(more: Partial<OfferGround>, least = leastEffort): Stencil {
    const made = this.make({ ...this.asked, ...more, asAsked: true, mostEffort: Math.max(least, mostEffort - this.effort) });
    this.effort += made.effort;
    return made;
  }

  private tried(more: Partial<OfferGround>, toLoseLittle: boolean): Stencil | undefined {
    const made = this.made(more);
    return holds(made) && !(toLoseLittle && made.problems.some((p) => p.code === 'stencil-much-lost')) ? made : undefined;
  }

  private taking(drops: readonly Spot[], closings: readonly Spot[]): Partial<OfferGround> {
    const { asked } = this;
    return { drops: [...(asked.drops ?? []), ...drops], closings: [...(asked.closings ?? []), ...closings] };
  }

  /** All that is too fine goes about the faults. */
  private around(): void {
    const { faults } = this.refused.certificate;
    if (faults.length === 0 || faults.length > mostAround) return;
    const spots = faults.map(({ atMm: [x, y] }): Spot => ({ atMm: [round(x), round(y)], withinMm: aroundMm }));
    const made = this.tried(this.taking(spots, spots), false);
    if (made) this.here({ spots, more: takeAway(made.prints, this.refused.prints), less: takeAway(this.refused.prints, made.prints) });
  }

  /** All that is too fine goes, paper as well as openings; where that is not enough, islands beside what is left as well. */
  private allFine(): void {
    const drops = [this.all],
      closings = [this.all];
    for (let again = 0; again <= mostAgain && this.goesOn(); again++) {
      const made = this.made(this.taking(drops, closings), [surestEffort, againEffort][again] ?? leastEffort);
      if (holds(made)) {
        const region = takeAway(made.prints, this.refused.prints),
          less = takeAway(this.refused.prints, made.prints);
        const change = { drops, closings };
        this.found.push({ rank: 'fine', offer: { kind: 'drop', region, less, atMm: null, areaMm2: regionArea(region), change } });
        return;
      }
      const islands = islandsBeside(made);
      if (islands.length === 0) return;
      drops.push(...islands);
    }
  }

  /** What is too fine closes, or goes: one by one where each of a few is enough; else all of it. */
  private oneKind(kind: 'close' | 'drop', places: readonly InTheWay[]): void {
    const taking = (spots: readonly Spot[]) => (kind === 'close' ? this.taking([], spots) : this.taking(spots, []));
    const offer = (spots: readonly Spot[], region: Region, atMm: PointMm | null): void => {
      const shared = { region, atMm, areaMm2: regionArea(region) };
      const found: Offer =
        kind === 'close' ? { kind, ...shared, change: { closings: spots } } : { kind, ...shared, change: { drops: spots } };
      this.found.push({ rank: kind, offer: found });
    };
    const singly = places.length > 0 && places.length <= mostSingly ? places : [];
    const enough = singly.filter(({ atMm }) => this.goesOn() && this.tried(taking([{ atMm }]), false));
    for (const { atMm, region } of enough) offer([{ atMm }], region, atMm);
    if (enough.length > 0 || !this.goesOn()) return;
    const made = this.tried(taking([this.all]), false);
    const { prints } = this.refused;
    if (made) offer([this.all], kind === 'close' ? takeAway(prints, made.prints) : takeAway(made.prints, prints), null);
  }

  /** In places. */
  private here({ spots, more: region, less }: LocalLoss): void {
    const change = { drops: spots, closings: spots };
    this.found.push({
      rank: 'here',
      offer: { kind: 'drop', region, less, atMm: spots[0].atMm, areaMm2: regionArea(region), change },
    });
  }

  private firmer(materials: readonly Material[]): void {
    const { leastBridgeMm, leastOpeningMm } = this.asked.material;
    const firmer = materials
      .filter(
        (m) =>
          m.leastBridgeMm <= leastBridgeMm &&
          m.leastOpeningMm <= leastOpeningMm &&
          m.leastBridgeMm + m.leastOpeningMm < leastBridgeMm + leastOpeningMm,
      )
      .sort((a, b) => b.leastBridgeMm - a.leastBridgeMm || b.leastOpeningMm - a.leastOpeningMm);
    const found = leastThat(firmer, (material) => this.goesOn() && this.tried({ material }, true) !== undefined);
    if (!found) return;
    const change = { materialId: found.id, leastBridgeMm: found.leastBridgeMm, leastOpeningMm: found.leastOpeningMm };
    this.found.push({ rank: 'firmer', offer: { kind: 'firmer', region: emptyRegion, atMm: null, areaMm2: 0, change } });
  }

  private larger(): void {
    const scale = leastThat(scales, (by) => this.goesOn() && this.tried(grown(this.asked, by), true) !== undefined);
    if (scale === undefined) return;
    const areaMm2 = regionArea(this.refused.prints) * (scale * scale - 1);
    const change = { scale, fits: grown(this.asked, scale).fits };
    this.found.push({ rank: 'larger', offer: { kind: 'larger', region: emptyRegion, atMm: null, areaMm2, change } });
  }
}

const holds = ({ certificate, problems }: Stencil): boolean => certificate.holds && !problems.some((p) => p.severity === 'error');

const round = (v: number): number => Math.round(v * 10) / 10;

/** The first of these that will do, by halves; none where the last will not. */
function leastThat<T>(values: readonly T[], willDo: (value: T) => boolean): T | undefined {
  let from = 0,
    to = values.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (willDo(values[middle])) to = middle;
    else from = middle + 1;
  }
  return to < values.length ? values[to] : undefined;
}

/** The cut larger about its middle; where it would leave the image it is judged on an image that is larger too. */
function grown(asked: OfferGround, by: number): Pick<OfferGround, 'shape' | 'aperture' | 'sheet'> & { readonly fits: boolean } {
  const box = regionBox(asked.shape);
  const cx = (box.minX + box.maxX) / 2,
    cy = (box.minY + box.maxY) / 2;
  const shape = mapRegion(asked.shape, (x, y) => [cx + (x - cx) * by, cy + (y - cy) * by]);
  const aperture: Box = 'rings' in asked.aperture ? regionBox(asked.aperture) : asked.aperture;
  const own = regionBox(shape);
  const fits = own.minX >= aperture.minX && own.minY >= aperture.minY && own.maxX <= aperture.maxX && own.maxY <= aperture.maxY;
  if (fits) return { shape, aperture: asked.aperture, sheet: asked.sheet, fits };
  const wide = (b: Box): Box => ({
    minX: cx + (b.minX - cx) * by,
    minY: cy + (b.minY - cy) * by,
    maxX: cx + (b.maxX - cx) * by,
    maxY: cy + (b.maxY - cy) * by,
  });
  return { shape, aperture: wide(aperture), sheet: wide(asked.sheet), fits };
}

/** What an offer costs in the print, where the layer has an ink: ΔE where its ink would be missing, or print in addition. */
export function pricedOffers(offers: readonly Offer[], codes: Codes, missing: Float32Array, extra: Float32Array): Offer[] {
  return offers.map((offer) => {
    if (offer.kind === 'close') return { ...offer, costDeltaE: meanOver(offer.region, codes, missing) };
    return offer.kind === 'drop' ? { ...offer, costDeltaE: meanOver(offer.region, codes, extra) } : offer;
  });
}

const inJob = ({ atMm: [x, y], withinMm }: Spot): { atMm: [number, number]; withinMm?: number } => ({
  atMm: [x, y],
  ...(withinMm === undefined ? {} : { withinMm }),
});

/** The Job in which an offer of this layer's stencil is taken. */
export function takeOffer(job: Job, layerId: string, offer: Offer): Job {
  const layer = job.layers.find((l) => l.id === layerId);
  if (!layer) return job;
  switch (offer.kind) {
    case 'close': {
      const closings = [...(layer.closings ?? []), ...offer.change.closings.map(inJob)];
      return { ...job, layers: job.layers.map((l) => (l.id === layerId ? { ...l, closings } : l)) };
    }
    case 'drop': {
      const drops = [...(layer.drops ?? []), ...offer.change.drops.map(inJob)];
      const more = (offer.change.closings ?? []).map(inJob);
      const closings = more.length > 0 ? { closings: [...(layer.closings ?? []), ...more] } : {};
      return { ...job, layers: job.layers.map((l) => (l.id === layerId ? { ...l, drops, ...closings } : l)) };
    }
    case 'firmer': {
      const { materialId } = offer.change;
      return { ...job, cuts: job.cuts.map((c) => (c.id === layer.cut ? { ...c, material: materialId } : c)) };
    }
    case 'larger':
      return largerCut(job, layer.cut, offer.change.scale);
  }
}

/** Every part of a cut larger about the middle of them all. */
function largerCut(job: Job, cutId: string, by: number): Job {
  const cut = job.cuts.find((c) => c.id === cutId);
  if (!cut) return job;
  const cx = cut.parts.reduce((sum, p) => sum + p.xMm, 0) / cut.parts.length,
    cy = cut.parts.reduce((sum, p) => sum + p.yMm, 0) / cut.parts.length;
  return {
    ...job,
    cuts: job.cuts.map((c) =>
      c.id !== cutId
        ? c
        : { ...c, parts: c.parts.map((p) => ({ ...p, scale: p.scale * by, xMm: cx + (p.xMm - cx) * by, yMm: cy + (p.yMm - cy) * by })) },
    ),
  };
}

/** An offer as it is read, on the page as in the command. */
export function sayOffer(offer: Offer, materials: readonly Material[]): Saying {
  switch (offer.kind) {
    case 'close': {
      const [first] = offer.change.closings;
      const how = { area: area(offer.areaMm2) },
        shows = offer.costDeltaE === undefined ? undefined : deltaE(offer.costDeltaE);
      if (first.withinMm !== undefined)
        return shows ? say('stencil.offerCloseAllSeen', { ...how, shows }) : say('stencil.offerCloseAll', how);
      const where = { ...how, n: offer.change.closings.length, first: lengths(first.atMm, ',', 0) };
      return shows ? say('stencil.offerCloseSeen', { ...where, shows }) : say('stencil.offerClose', where);
    }
    case 'drop': {
      const [first] = offer.change.drops;
      if (offer.less) {
        const n = offer.change.drops.length,
          values = { more: area(offer.areaMm2), less: area(regionArea(offer.less)) };
        return offer.atMm === null
          ? say('stencil.offerCoarser', values)
          : say('stencil.offerCoarserThere', { ...values, n, first: lengths(first.atMm, ',', 0) });
      }
      const how = { area: area(offer.areaMm2) },
        shows = offer.costDeltaE === undefined ? undefined : deltaE(offer.costDeltaE);
      if (first.withinMm !== undefined)
        return shows ? say('stencil.offerDropAllSeen', { ...how, shows }) : say('stencil.offerDropAll', how);
      const where = { ...how, n: offer.change.drops.length, first: lengths(first.atMm, ',', 0) };
      return shows ? say('stencil.offerDropSeen', { ...where, shows }) : say('stencil.offerDrop', where);
    }
    case 'firmer':
      return say('stencil.offerFirmer', {
        material: materials.find((m) => m.id === offer.change.materialId)?.name ?? asWritten(offer.change.materialId),
        paper: length(offer.change.leastBridgeMm),
        opening: length(offer.change.leastOpeningMm),
      });
    case 'larger':
      return say(offer.change.fits ? 'stencil.offerLarger' : 'stencil.offerLargerThanImage', { by: share(offer.change.scale, 0) });
  }
}

/** The ways out as notes beside the refusal, so that every list of problems has them. */
export const offerNotes = (offers: readonly Offer[], materials: readonly Material[], place: string): Problem[] =>
  offers.map((offer) => problem('note', 'stencil-way-out', place, sayOffer(offer, materials), say('stencil.takeAnOffer')));
