import { causes } from "@/lib/domain/cause";
import type { FailureRates } from "@/lib/failures/failure-rates";
import type { Counting, Dimension } from "@/lib/failures/rate-question";
import { type CountedNoun, describeEstimate, formatEstimate } from "@/lib/format/format-estimate";
import { canBeJudged, nameOf, sortedGroups } from "./sorted-groups";

export const dimensionNames: Readonly<Record<Dimension, string>> = {
  component: "Component",
  model: "Model",
  maker: "Maker",
  type: "Appliance",
  age: "Age",
  symptom: "Symptom",
  cause: "Cause",
  payer: "Payer",
  year: "Year",
};

export function countingName(counting: Counting): string {
  if (counting === "failures") return "Failures of the component itself";
  if (counting === "calls") return "All closed jobs";
  return `Jobs closed with “${causes[counting].name}”`;
}

export function countedNoun(counting: Counting): CountedNoun {
  return counting === "failures" ? "failures" : counting === "calls" ? "calls" : "jobs";
}

/** The sentence that opens the page; the group in it leads by its lowest believable rate, not by luck. */
export function ratesFinding(rates: FailureRates): string {
  const counted = countedNoun(rates.question.counting);
  const [first] = sortedGroups(rates.groups, "lowest");
  if (first === undefined || first.kind !== "rate" || !canBeJudged(first)) {
    return rates.fleet.kind === "rate"
      ? "Too little to judge any group by itself"
      : "No unit was at risk, so there is no rate to give";
  }
  return `${nameOf(first)}: ${describeEstimate(formatEstimate(first.estimate, { counted }))}`;
}
