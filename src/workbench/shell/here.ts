/** The page's own address: written out, a link to a station is not taken for a way to skip parts of a page. */
export const here = location.href.split('#')[0];
