/** Spectra and colours. */
export const colour = {};
