import type { ListedPart } from "@/db/queries/part-list";
import { describeChance, describeNeed } from "@/lib/format/describe-need";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatDecimal } from "@/lib/format/format-decimal";
import type { StoredLead, StoredPlan } from "@/lib/stock/stored-plan";
import type { PartRow } from "./parts-view";

/** "4, of them 2 in trucks", or that nobody has counted. */
export function onHandWords({ onHand, inTrucks, reserved }: ListedPart): string {
  if (onHand === undefined) return "not counted";
  const trucks = inTrucks > 0 ? `, ${formatCount(inTrucks)} in trucks` : "";
  return `${formatCount(onHand)}${trucks}${reserved > 0 ? `, ${formatCount(reserved)} put aside` : ""}`;
}

export function onOrderWords({ onOrder, nextExpectedOn, drafted }: ListedPart): string {
  const coming =
    onOrder === 0
      ? ""
      : `${formatCount(onOrder)}${nextExpectedOn === undefined ? "" : `, due ${formatPlainDay(nextExpectedOn)}`}`;
  const draft = drafted === 0 ? "" : `${formatCount(drafted)} as a draft`;
  return [coming, draft].filter((words) => words !== "").join("; ") || "–";
}

/** Need until an order placed at the next look has come. */
export function needWords({ reorder }: StoredPlan): string {
  switch (reorder.kind) {
    case "reorder-point":
      return describeNeed(reorder);
    case "nothing-to-bridge":
      return "comes the same day";
    case "beyond-forecast":
      return `the wait of ${formatCount(Math.round(reorder.neededDays))} days is longer than the forecast`;
    case "no-forecast":
      return "no use on record";
  }
}

/** What to order and why, in a sentence. */
export function adviceWords({ line, plan }: PartRow): string {
  switch (line.kind) {
    case "order":
      return `${formatCount(line.pieces)}. ${availableWords(line.available)}, reorder point ${levelOf(plan)}: ${describeChance(line.chanceShort)} waits would end short.`;
    case "negative-stock":
      return `Fewer than none: jobs used more than was entered. If the shelf is empty, ${line.pieces > 0 ? `order ${formatCount(line.pieces)}` : "enough is on order"}.`;
    case "enough":
      return line.available === 0
        ? "None kept: hardly asked for, order it when a job needs it."
        : `${availableWords(line.available)}, reorder point ${levelOf(plan)}.`;
    case "not-counted":
      return "Say how many there are, then what to order follows.";
    case "no-need-known":
      return needWords(plan);
  }
}

export function leadWords({ kind, mean, longest, ...lead }: StoredLead): string {
  switch (kind) {
    case "observed":
      return `${formatDecimal(mean, 0)} days on average, ${formatDecimal(longest, 0)} at most${"orders" in lead ? `, over ${formatCounted(lead.orders, "delivery", "deliveries")}` : ""}`;
    case "few-orders":
      return `${formatDecimal(longest, 0)} days, the longest of few deliveries`;
    case "stated":
      return `${formatDecimal(mean, 0)} days as stated`;
    case "assumed":
      return `${formatDecimal(mean, 0)} days assumed: nobody said, and no order came yet`;
  }
}

function availableWords(available: number): string {
  return `${formatCount(available)} on hand or coming`;
}

function levelOf({ reorder }: StoredPlan): string {
  return reorder.kind === "reorder-point" ? formatCount(reorder.level) : "–";
}
