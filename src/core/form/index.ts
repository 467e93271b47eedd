/** Shapes to be cut: reading them, placing them, combining them, turning them into pixels. */
export { emptyRegion, rectangle, regionArea, regionBox, regionPerimeter, ringArea } from './region.ts';
export type { Box, Region } from './region.ts';
export { boxRegion, common, offsetRegion, parts, simplify, strip, takeAway, tidy, unite } from './polygons.ts';
export type { Join } from './polygons.ts';
export { rasterize, rasterizeInto } from './raster.ts';
export type { Grid } from './raster.ts';
export { mapRegion, place, repeatPlacements, toTrueSize } from './place.ts';
export type { Placement, Repeat } from './place.ts';
export { prepareDrawings, readSvg } from './svg/read-svg.ts';
export type { Drawing } from './svg/read-svg.ts';
export { fitOutline, flattenOutline, knifeFit, pathData, readPathData } from './fit.ts';
export type { FitRules, Segment } from './fit.ts';
export { writeDxf } from './dxf-write.ts';
export type { DxfLayer } from './dxf-write.ts';
export { readDxf } from './dxf-read.ts';
