import type { DefinitionKey } from "@/app/_ui/definitions";

/** The page in its order: what belongs together, under one heading each. */
export const definitionGroups = [
  {
    id: "what-is-counted",
    title: "What is counted",
    keys: [
      "unit",
      "in-service-day",
      "window",
      "failure",
      "call",
      "not-counted",
      "spell",
      "age",
      "exposure",
      "from-counts",
    ],
  },
  { id: "what-is-missing", title: "What is missing", keys: ["left-out", "bias", "reporting-delay"] },
  {
    id: "rates",
    title: "Rates and ranges",
    keys: ["rate", "range", "poisson-exact", "poisson-robust", "poisson-mid-p"],
  },
  { id: "comparisons", title: "Comparisons", keys: ["ratio", "observed-expected", "ratio-at-like-ages", "verdict"] },
  { id: "shares", title: "Shares", keys: ["wilson", "clopper-pearson", "jeffreys", "goodman", "sison-glaz"] },
  {
    id: "lives",
    title: "Lives of components",
    keys: [
      "share-failed",
      "age-bands",
      "cumulative-hazard",
      "fitted-life",
      "fit-checks",
      "repeat-failures",
      "repeats-compared",
    ],
  },
  { id: "many", title: "Many groups at once", keys: ["shrinkage", "many-tests", "funnel"] },
  {
    id: "shown",
    title: "How it is shown",
    keys: ["grades", "ratio-grades", "zero-events", "rounding", "order", "causes"],
  },
] as const satisfies readonly { id: string; title: string; keys: readonly DefinitionKey[] }[];

export type DefinitionGroup = (typeof definitionGroups)[number];
