/** Anchors of How we count: every number links to what it counts, by one of these. */
export const definitions = {
  unit: "Unit",
  "in-service-day": "In-service day",
  window: "Time watched",
  failure: "Failure",
  call: "Call",
  "not-counted": "What is not counted",
  spell: "Life of a component",
  age: "Age",
  exposure: "Unit-years",
  rate: "Rate",
  range: "Range",
  "poisson-exact": "Range of a rate",
  "poisson-robust": "Range of a rate when units fail again and again",
  wilson: "Range of a share",
  goodman: "Ranges of several shares together",
  ratio: "Times the fleet",
  "observed-expected": "Times what its ages predict",
  "share-failed": "Share failed by an age",
  "fitted-life": "Fitted life",
  "repeat-failures": "Failures per unit by age",
  grades: "Firm, loose, thin",
  "zero-events": "When nothing has failed",
  order: "Order of rows",
  causes: "What a rate does not say",
} as const;

export type DefinitionKey = keyof typeof definitions;

export function definitionHref(key: DefinitionKey): string {
  return `/shop/how-we-count#${key}`;
}
