import type { PartPage } from "@/db/queries/part-page";
import { monthWords, needOf } from "@/lib/figures/fan";
import type { StoredOutlook, StoredTest } from "@/lib/forecast/stored-outlook";
import { describeNeed, run } from "@/lib/format/describe-need";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import { formatShare } from "@/lib/format/format-share";
import type { StoredPlan } from "@/lib/stock/stored-plan";
import { leadWords } from "../line-words";
import { placeName } from "./stock-words";

/** Under this a month a fan would be flat on the floor; the twenty futures say it all. */
const fanFromYearly = 12;
/** Months of use from which a range is shown beside the counts. */
const fewestMonths = 12;

export function partFinding({ partNumber, description, outlook, forecastFrom }: PartPage): string {
  // A number is one word: hyphens that do not break.
  const number = partNumber.replaceAll("-", "\u2011");
  const name = description === "" ? number : `${description} ${number}`;
  const first = outlook.kind === "forecast" ? outlook.months[0] : undefined;
  if (first === undefined) return `${name}: no use on record`;
  return `${name}: ${describeNeed(needOf(first))} in ${monthWords(forecastFrom)}`;
}

export function hasFan({ usedLastYear, history }: PartPage): boolean {
  return usedLastYear >= fanFromYearly && history.length >= fewestMonths;
}

/** What is odd about the records of a part, each a sentence. */
export function partNotes({
  outlook,
  component,
  history,
  usedLastYear,
  spellings,
  places,
}: PartPage): readonly string[] {
  const notes = [...outlook.notes];
  const below = places.filter(({ onHand }) => onHand < 0).map(({ place, onHand }) => `${placeName(place)} ${onHand}`);
  if (below.length > 0)
    notes.push(
      `The ledger has fewer than none at some places (${below.join(", ")}): jobs took more there than was ever entered. Count them; until then other places make up for it.`,
    );
  if (component === undefined)
    notes.push(
      "No component is on file for it, or jobs name several: it is forecast from its own use, and stands under “no component” in sums.",
    );
  if (spellings.length > 0 && history.length < fewestMonths)
    notes.push(
      `Only ${formatCounted(history.length, "whole month")} of use ${history.length === 1 ? "is" : "are"} on record: the range leans on how other parts are used. With ${fewestMonths} months it can be tested on its own.`,
    );
  if (outlook.kind === "forecast" && outlook.basis === "never-used")
    notes.push("No job ever used it: what is expected rests on how rarely other parts come into use.");
  else if (usedLastYear < fanFromYearly)
    notes.push(
      `Fewer than one a month is used (${formatCount(usedLastYear)} in 12 months), so no monthly fan is drawn.`,
    );
  return notes;
}

/** The reorder point with its arithmetic. */
export function reorderWords({ lead, reviewDays, shortOneIn, reorder }: StoredPlan): readonly string[] {
  const wait = `From one look at the shelf to the next ${formatCounted(reviewDays, "day")}; from order to delivery ${leadWords(lead)}.`;
  switch (reorder.kind) {
    case "reorder-point":
      return [
        wait,
        `Over that time ${describeNeed(reorder)}; ${formatDecimal(reorder.expected, 1)} on average over all futures.`,
        `Wanted: short in no more than 1 of ${shortOneIn} waits. ${formatCount(reorder.level)} is the least stock that lasts in ${formatShare(1 - 1 / shortOneIn, 0)} of 100 futures or more; it lasts in ${formatShare(reorder.service, 0)}.`,
        `So: order when what is on hand and on order, less what is put aside, is at or below ${formatCount(reorder.level)}.`,
      ];
    case "nothing-to-bridge":
      return ["It comes on the day it is ordered, and the shelf is looked at every day: none has to lie there."];
    case "beyond-forecast":
      return [
        wait,
        `That is ${formatCount(Math.round(reorder.neededDays))} days, and the forecast ends after ${formatCount(Math.round(reorder.forecastDays))}: no reorder point can be given. Enter a shorter lead time, or buy by hand.`,
      ];
    case "no-forecast":
      return [wait, "No use is on record, so no reorder point can be given."];
  }
}

export function quantityWords({ order, pack }: StoredPlan): string {
  if (order.kind === "no-demand") return "No need is expected in the next year, so there is no usual quantity.";
  const why = {
    costs: "ordering and holding together cost least so",
    "longest-months": "more would last longer than a year",
    "one-pack": pack === 1 ? "one at a time costs least" : "that is one pack",
  }[order.setBy];
  return `Usual quantity ${formatCount(order.pieces)}: ${why}. About ${formatDecimal(order.yearlyDemand, 1)} a year are expected.`;
}

/** "of 60 monthly 90 % ranges, 55 held the actual count": how the chosen method did. */
export function heldWords(outlook: StoredOutlook): string | undefined {
  if (outlook.kind !== "forecast" || outlook.test.kind !== "tested") return undefined;
  const chosen = outlook.test.methods.find(({ key }) => key === outlook.method);
  if (chosen === undefined) return undefined;
  const { months, origins } = outlook.test;
  const [held60, held90] = [chosen.inside60, chosen.inside90].map((share) => Math.round(share * months));
  // Ten months seen from ten starting points are fewer than they look: one odd month is judged again and again.
  const behind = `${formatCounted(origins, "month")}, most of them seen from several starting points`;
  return `Of ${formatCounted(months, "monthly range")} made from the months before alone (${behind}), the 6-in-10 one held the actual count ${formatCount(held60 ?? 0)} times and the 9-in-10 one ${formatCount(held90 ?? 0)} times; we aim for ${aim(months, 0.6)} and ${aim(months, 0.9)}.`;
}

function aim(months: number, level: number): string {
  return run(Math.floor(months * level), Math.ceil(months * level));
}

export function lossWords(test: Extract<StoredTest, { kind: "tested" }>, key: string): string {
  const chosen = test.methods.find((method) => method.key === key);
  const simple = test.methods.filter((method) => simpleKeys.includes(method.key));
  const [best] = simple.toSorted((a, b) => a.loss - b.loss);
  if (chosen === undefined || best === undefined) return "";
  const less = Math.round(100 * (1 - chosen.loss / best.loss));
  if (less === 0) return `It lost as much as the best simple one, ${best.name}.`;
  return `It lost ${Math.abs(less)} in 100 ${less > 0 ? "less" : "more"} than the best simple one here, ${best.name}.`;
}

const simpleKeys: readonly string[] = [
  "last-value",
  "mean",
  "croston",
  "syntetos-boylan",
  "teunter-syntetos-babai",
  "empirical",
];
