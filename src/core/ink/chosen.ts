/**
 * The constants of forecasts that no source gives: chosen on measured overprints (docs/optics.md 2 to 6). `npm run colours -- --choose`
 * chooses them anew without one set after the other, and judges each time on the set left out. Nothing else writes here.
 */
export const chosen = {
  /** Light that the darkest ink still gives back from within, on top of the gloss; gloss is at least a share of the darkest reading. */
  lightWithin: 0.015,
  glossShare: { spectra: 0.5, colours: 0.3 },
  /**
   * How thick films lie on ink, and how unsure that is: of all of them (sigma), and of one on a certain other one besides (pairs). Dried films lie nearly as thick as on paper, wet ones three quarters. A smoothest
   * spectrum absorbs a little beside its ink's true band, which trapping makes good too: where spectra were read, films lie thicker.
   */
  trapping: {
    'dried-between': { spectra: { trapping: 0.95, sigma: 0.04, pairs: 0.07 }, colours: { trapping: 0.85, sigma: 0.04, pairs: 0.12 } },
    'wet-on-wet': { spectra: { trapping: 0.84, sigma: 0.06, pairs: 0.07 }, colours: { trapping: 0.76, sigma: 0.05, pairs: 0.07 } },
    unknown: { spectra: { trapping: 0.9, sigma: 0.07, pairs: 0.07 }, colours: { trapping: 0.8, sigma: 0.06, pairs: 0.07 } },
  },
  /** Doubt of gloss, as reflectance; of a film by hand, and of one that is taken to be as it was read. */
  glossSigma: 0.003,
  filmSigma: 0.12,
  filmReadSigma: 0.05,
  /** What the model is off by at an overlap as far as learning is concerned, ΔE00. */
  learning: { spectrum: 1.2, xyz: 2.5, lab: 2.5, photo: 3 },
  /** For robustness readings count as more doubtful than they are; what is learnt is surer by so much. */
  sharpened: 0.7,
  /** Doubt of ln K behind a colour. */
  shapes: 0.22,
  /** How alike the model's errors are at two overlaps: powers of the layers they share, and how near their colours are; the rest is one overlap's own. */
  kin: { lightness: 3, colour: 3, near: 60, own: 1.2 },
  /** What the model is off by at an overlap, in steps of ΔE00 along lightness, and along chroma and hue each. */
  model: {
    spectrum: { colours: { light: 0.5, colour: 0.6 }, withBlack: { light: 0.8, colour: 1 } },
    colours: { colours: { light: 1, colour: 1.2 }, withBlack: { light: 1.5, colour: 1.8 } },
    photo: { colours: { light: 3, colour: 3.6 }, withBlack: { light: 2.4, colour: 2.9 } },
  },
};
