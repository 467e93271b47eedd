import { regionArea, regionBox, mapRegion, type Box, type Region } from '../../../form/index.ts';
import type { Job } from '../../../job/index.ts';
import type { Codes } from '../../../print/index.ts';
import type { CostRaster, InTheWay, Material, Offer, PointMm, Stencil, StencilRequest } from '../../../stencil/index.ts';
import { makeStencil } from '../../../stencil/index.ts';
import { area, asWritten, deltaE, length, lengths, say, share, type Saying } from '../../../../words/say.ts';
import { problem, type Problem } from '../../../problem.ts';
import { meanOver } from './costs.ts';

/** Sizes, smallest first: the least that lets the stencil hold is offered. Two or three are tried: what holds at one size mostly holds larger. */
const scales: readonly number[] = [1.1, 1.25, 1.5, 2, 3];
/** So many openings or details are offered one by one; beyond that only all of them together. */
const mostSingly = 3;

export type OfferGround = Omit<StencilRequest, 'cost' | 'place'> & { readonly cost?: CostRaster };

/**
 * Ways out for a stencil that does not hold or loses much, least loss first: close what stands in the way, choose a firmer material, make
 * the drawing larger. A material and a size are offered only where the stencil made with them holds.
 */
export function offersFor(asked: OfferGround, materials: readonly Material[], refused: Stencil): Offer[] {
  const holds = (request: OfferGround): boolean => {
    const made = makeStencil(request);
    return made.certificate.holds && made.problems.every((p) => p.severity !== 'error');
  };
  /** What closing and dropping lose is told; another size or material is to lose little. */
  const holdsWell = (request: OfferGround): boolean => {
    const made = makeStencil(request);
    return made.certificate.holds && made.problems.every((p) => p.severity !== 'error' && p.code !== 'stencil-much-lost');
  };
  const offers: Offer[] = [];
  const { inTheWay = [], mayGo = [] } = refused;
  /** All of them together; where they are few and each of them is enough, those too. */
  const together = (places: readonly InTheWay[], holdsWith: (at: readonly PointMm[]) => boolean): (readonly InTheWay[])[] => {
    if (places.length === 0 || !holdsWith(places.map((p) => p.atMm))) return [];
    const singly = places.length > 1 && places.length <= mostSingly ? places.filter((p) => holdsWith([p.atMm])) : [];
    return singly.length > 0 ? singly.map((p) => [p]) : [places];
  };
  const shared = (places: readonly InTheWay[]) => {
    const region: Region = { rings: places.flatMap((p) => p.region.rings) };
    return { region, atMm: places[0].atMm, areaMm2: places.reduce((sum, p) => sum + regionArea(p.region), 0) };
  };
  for (const places of together(inTheWay, (at) => holds({ ...asked, closings: [...(asked.closings ?? []), ...at] })))
    offers.push({ kind: 'close', ...shared(places), change: { closings: places.map((p) => p.atMm) } });
  for (const places of together(mayGo, (at) => holds({ ...asked, drops: [...(asked.drops ?? []), ...at] })))
    offers.push({ kind: 'drop', ...shared(places), change: { drops: places.map((p) => p.atMm) } });
  const firmer = materials
    .filter(
      (m) =>
        m.leastBridgeMm <= asked.material.leastBridgeMm &&
        m.leastOpeningMm <= asked.material.leastOpeningMm &&
        m.leastBridgeMm + m.leastOpeningMm < asked.material.leastBridgeMm + asked.material.leastOpeningMm,
    )
    .sort((a, b) => b.leastBridgeMm - a.leastBridgeMm || b.leastOpeningMm - a.leastOpeningMm);
  const found = leastThat(firmer, (material) => holdsWell({ ...asked, material }));
  if (found)
    offers.push({
      kind: 'firmer',
      region: { rings: [] },
      atMm: null,
      areaMm2: 0,
      change: { materialId: found.id, leastBridgeMm: found.leastBridgeMm, leastOpeningMm: found.leastOpeningMm },
    });
  const scale = leastThat(scales, (by) => holdsWell({ ...asked, ...grown(asked, by) }));
  if (scale !== undefined) {
    const { fits } = grown(asked, scale);
    offers.push({
      kind: 'larger',
      region: { rings: [] },
      atMm: null,
      areaMm2: regionArea(refused.prints) * (scale * scale - 1),
      change: { scale, fits },
    });
  }
  return offers;
}

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

/** The Job in which an offer of this layer's stencil is taken. */
export function takeOffer(job: Job, layerId: string, offer: Offer): Job {
  const layer = job.layers.find((l) => l.id === layerId);
  if (!layer) return job;
  switch (offer.kind) {
    case 'close': {
      const closings = [...(layer.closings ?? []), ...offer.change.closings.map(([x, y]) => ({ atMm: [x, y] as [number, number] }))];
      return { ...job, layers: job.layers.map((l) => (l.id === layerId ? { ...l, closings } : l)) };
    }
    case 'drop': {
      const drops = [...(layer.drops ?? []), ...offer.change.drops.map(([x, y]) => ({ atMm: [x, y] as [number, number] }))];
      return { ...job, layers: job.layers.map((l) => (l.id === layerId ? { ...l, drops } : l)) };
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
      const values = { n: offer.change.closings.length, first: lengths(offer.change.closings[0], ',', 0), area: area(offer.areaMm2) };
      return offer.costDeltaE === undefined
        ? say('stencil.offerClose', values)
        : say('stencil.offerCloseSeen', { ...values, shows: deltaE(offer.costDeltaE) });
    }
    case 'drop': {
      const values = { n: offer.change.drops.length, first: lengths(offer.change.drops[0], ',', 0), area: area(offer.areaMm2) };
      return offer.costDeltaE === undefined
        ? say('stencil.offerDrop', values)
        : say('stencil.offerDropSeen', { ...values, shows: deltaE(offer.costDeltaE) });
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
