/** What a payer pays separately for one job. Coverage is decided for each on its own. */
export const payItems = ["parts", "labour", "trip", "diagnosis"] as const;
export type PayItem = (typeof payItems)[number];
