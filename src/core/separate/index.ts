/** A picture → stencils, inks and their order. */
export { mostMegapixels, preparePictures, readPicture, scaledLab } from './picture/index.ts';
export type { Crop, Picture, PictureModules, Pixels } from './picture/index.ts';
