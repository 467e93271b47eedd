/** The few entries of lcms-wasm (Little CMS 2.16, MIT) that this room calls; the package carries no types. */

export interface Lcms {
  cmsOpenProfileFromMem(bytes: Uint8Array, length: number): number;
  cmsCloseProfile(profile: number): void;
  cmsCreateXYZProfile(): number;
  cmsCreate_sRGBProfile(): number;
  cmsGetColorSpaceASCII(profile: number): string | null;
  cmsGetProfileInfoASCII(profile: number, info: number, language: string, country: string): string;
  cmsCreateTransform(from: number, fromFormat: number, to: number, toFormat: number, intent: number, flags: number): number;
  cmsDoTransform(transform: number, input: Uint8Array | Uint16Array, pixels: number): Uint16Array;
  cmsDeleteTransform(transform: number): void;
}
export function instantiate(options: {
  instantiateWasm(imports: WebAssembly.Imports, done: (instance: WebAssembly.Instance) => void): WebAssembly.Exports;
}): Promise<Lcms>;
export const cmsInfoDescription: number;
export const INTENT_RELATIVE_COLORIMETRIC: number;
export const TYPE_GRAY_8: number;
export const TYPE_GRAY_16: number;
export const TYPE_RGB_8: number;
export const TYPE_RGB_16: number;
export const TYPE_XYZ_16: number;
