import type { LoadResult } from "./load-result";

/** Rows take the currency, the grace and the time zone from the company. */
export const noCompany: LoadResult = {
  kind: "unreadable",
  problems: [
    {
      problem: "The company is not set up yet.",
      fix: "Load its shop.json first; /files/columns shows what it holds.",
    },
  ],
};
