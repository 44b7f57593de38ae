import type { DefinitionKey } from "@/app/_ui/definitions";
import type { EstimateMethod } from "@/lib/statistics/estimate";

/** Where each way to make a range is defined, and by which name tables and files call it. A new method must come here. */
export const methodDefinitions: Readonly<
  Record<EstimateMethod, { readonly of: DefinitionKey; readonly name: string }>
> = {
  "poisson-exact": { of: "poisson-exact", name: "exact Poisson" },
  "poisson-mid-p": { of: "poisson-mid-p", name: "poisson mid p" },
  "poisson-robust": { of: "poisson-robust", name: "by-unit (robust)" },
  "gamma-poisson": { of: "shrinkage", name: "gamma poisson" },
  wilson: { of: "wilson", name: "wilson" },
  "wilson-continuity": { of: "wilson", name: "wilson continuity" },
  "clopper-pearson": { of: "clopper-pearson", name: "clopper pearson" },
  "binomial-mid-p": { of: "clopper-pearson", name: "binomial mid p" },
  "binomial-likelihood": { of: "jeffreys", name: "binomial likelihood" },
  jeffreys: { of: "jeffreys", name: "jeffreys" },
  "agresti-coull": { of: "wilson", name: "agresti coull" },
  goodman: { of: "goodman", name: "goodman" },
  "kaplan-meier-log-log": { of: "share-failed", name: "kaplan meier log log" },
  "life-fit-logit": { of: "fitted-life", name: "life fit logit" },
  "mean-cumulative-robust": { of: "repeat-failures", name: "mean cumulative robust" },
  "rate-ratio-exact": { of: "ratio", name: "rate ratio exact" },
  "rate-ratio-stratified-exact": { of: "ratio-at-like-ages", name: "rate ratio stratified exact" },
  "observed-over-expected-exact": { of: "observed-expected", name: "observed over expected exact" },
};

/** Names of the methods that one definition explains. */
export function methodsUnder(key: DefinitionKey): readonly string[] {
  return Object.values(methodDefinitions)
    .filter(({ of }) => of === key)
    .map(({ name }) => name);
}
