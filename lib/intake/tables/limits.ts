/** Wider than any export; a row that has more cells than this was put together wrongly, or to exhaust whoever reads it. */
export const mostColumns = 2_000;
