/** The trade's own words and what they mean here. */
export interface Entry {
  /** The word, then other ways a text says it, so that it is found there; commas between them. */
  readonly names: string;
  readonly says: string;
}
const entry = (names: string, says: string): Entry => ({ names, says });

export const glossary = {
  title: 'Words of the trade',
  open: 'Words',
  all: 'All words',
  choose: 'Choose a word.',
  here: 'Words in this text:',
  seeStation: (station: string) => `To the station ${station}`,
  licences: 'What this page is made of, and its licences',
  terms: {
    form: entry('form, forms', 'A shape to be cut, with its drawing and its true size.'),
    cut: entry('cut, cuts', 'One knife path on one sheet. It gives two stencils at once: the window and the piece.'),
    stencil: entry('stencil, stencils', 'One cut sheet for one layer. It lies under the mesh and holds ink back wherever it is.'),
    window: entry('window, windows', 'The sheet with the hole: ink goes through the opening.'),
    piece: entry('piece, pieces', 'What drops out of the window. Laid under the mesh, ink prints everything around it.'),
    pair: entry('cut pair, cut pairs', 'Window and piece of one knife cut, used as two runs that fit each other exactly.'),
    island: entry(
      'island, islands',
      'Part of a stencil that nothing holds: the middle of a ring. It needs a bridge, or goes down as a loose piece.',
    ),
    bridge: entry(
      'bridge, bridges',
      'A narrow strip left standing that holds an island. It shows as a gap in the ink, so it goes where it is least seen.',
    ),
    loose: entry('loose piece, loose pieces', 'A part laid down by hand before the first pull; the ink holds it to the mesh from then on.'),
    layer: entry('layer, layers', 'One stencil in one ink.'),
    run: entry('run, runs', 'Printing one layer over the whole stack of sheets.'),
    pull: entry('pull, pulls, pulled', 'One stroke of the squeegee for one sheet.'),
    laydown: entry(
      'laydown, laydowns',
      'The order in which the inks are put down. Transparent inks mix on the paper; what lies on top tells most.',
    ),
    overlap: entry(
      'overlap, overlaps',
      'One combination of layers on one paper. Six runs can give 64 of them, each with a colour of its own.',
    ),
    proof: entry(
      'proof, proofs, progressive proof, progressive proofs',
      'The print foreseen. A progressive proof is the sheet after each run.',
    ),
    strength: entry('strength, strengths', 'How much of the pot is ink, the rest being base. 100 % is ink alone.'),
    base: entry(
      'base, transparent base, extender base, extender',
      'Ink without colour. It makes a film more transparent without making it thinner.',
    ),
    retarder: entry(
      'retarder, retarders',
      'What slows drying in the mesh, glycerin and the like. Too much, and the print never dries: follow the maker’s label.',
    ),
    drawdown: entry(
      'drawdown, drawdowns',
      'A thin film of ink pulled with a blade on the print’s own paper. Judge and measure it fully dry: inks dry darker.',
    ),
    ladder: entry('tint ladder, ladder', 'One ink drawn down in several strengths, to learn how it pales with base.'),
    reach: entry('reach, reaches', 'Everything a run can become: each ink at each strength, with all overlaps that follow.'),
    reading: entry('reading, readings', 'A measured colour: from an instrument, a table, or a photograph with a grey card.'),
    lab: entry('Lab', 'A colour as three numbers (CIELAB): lightness 0 to 100, green to red, blue to yellow. Here in daylight D50.'),
    sigma: entry('σ, standard deviation', 'How far things scatter: two of three lie within it, nineteen of twenty within twice.'),
    delta: entry('ΔE00, ΔE', 'How far apart two colours look (CIEDE2000). About 1 is just seen side by side; 5 anyone sees.'),
    mesh: entry('mesh, meshes', 'The fabric of the screen, in threads to the centimetre or inch. Finer mesh lays less ink.'),
    deposit: entry('deposit, deposits', 'How thick the wet film is that mesh, blade and hand lay down, in microns.'),
    gap: entry(
      'off-contact, gap',
      'The gap between mesh and paper. The mesh touches only under the blade and lifts behind it, so the sheet does not stick.',
    ),
    riser: entry('riser, risers', 'What holds the gap: card under the front of the frame and under the hinge.'),
    squeegee: entry('squeegee, squeegees', 'The blade that pushes ink through the mesh.'),
    register: entry(
      'register, misregister',
      'How exactly layers fall on one another. It varies from sheet to sheet; by hand half a millimetre is good.',
    ),
    stop: entry('stop, stops', 'A strip that a sheet is pushed against: two on the long side, one on the short side.'),
    hinged: entry(
      'hinged sheet, hinged sheets',
      'A clear sheet on a hinge: the layer is printed on it first, then the paper is pushed into place below it.',
    ),
    pins: entry('pins, pin', 'Pins that a punched sheet hangs on: the surest way by hand.'),
    spread: entry('spread, trap', 'A layer cut a little larger so that no white shows where it sits off.'),
    spoilage: entry(
      'spoilage, spoiled',
      'Sheets that fail in a run. With many runs more sheets are needed to start with than are to be signed.',
    ),
    makeready: entry('set-up, setting up', 'The first sheets of a run, until it prints as it should.'),
    edition: entry('edition, editions', 'The numbered prints that are alike, on one paper.'),
    bat: entry('B.A.T.', 'Good to print: the sheet that every other is compared with.'),
    ap: entry('A/P', 'Artist’s proof (épreuve d’artiste): outside the numbers, usually a tenth of the edition at most.'),
    pp: entry('P/P', 'Printer’s proof: a good print for whoever printed it, outside the numbers.'),
    hc: entry('H.C.', 'Hors commerce, not for sale: for showing, outside the numbers.'),
    ks: entry(
      'K/S, takes (K), throws back (S)',
      'What a film of ink does to light of each colour: K is how much it takes, S how much it throws back (Kubelka and Munk). Much K and little S: clear and dark. Much S: it covers.',
    ),
    ground: entry(
      'one ground, one paper',
      'Drawn down on one paper alone: how the ink looks there is known, how much it covers is not. Another strip over black tells that.',
    ),
    worst: entry(
      'worst 5 %',
      'Of a hundred sheets, the five that lie furthest off register: how the print looks at the worst that is usual.',
    ),
    state: entry('state proof, trial proof', 'A sheet kept from on the way: after some of the runs, or in other colours.'),
    varied: entry('E.V.', 'A varied edition: sheets that differ on purpose, by paper or colour.'),
    openTime: entry(
      'open time, open times',
      'How long ink may stand in the mesh before it dries there. A pause longer than that blocks the screen.',
    ),
  },
};

export type TermId = keyof typeof glossary.terms;
