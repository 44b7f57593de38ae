import type { OrderLine } from "@/db/queries/part-orders";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";

export function ordersFinding(lines: readonly OrderLine[], today: Day): string {
  const drafts = lines.filter(({ state }) => state === "draft").length;
  const coming = lines.filter(({ state }) => state === "ordered");
  const late = coming.filter(({ expectedOn }) => expectedOn !== undefined && expectedOn < today).length;
  if (drafts + coming.length === 0) return "Nothing is on the order list";
  return `${drafts === 0 ? "Nothing" : formatCounted(drafts, "line")} to be ordered, ${formatCount(coming.length)} on the way${late > 0 ? `, ${formatCount(late)} of them late` : ""}`;
}

export function stateWords(
  { state, received, quantity, orderedOn, expectedOn, closedOn }: OrderLine,
  today: Day,
): string {
  switch (state) {
    case "draft":
      return "Draft";
    case "ordered": {
      const part = received > 0 ? `${formatCount(received)} of ${formatCount(quantity)} came; ` : "";
      const due = expectedOn === undefined ? "no day stated" : dueWords(expectedOn, today);
      return `${part === "" ? "Ordered" : `${part}ordered`}${orderedOn === undefined ? "" : ` ${formatPlainDay(orderedOn)}`}, ${due}`;
    }
    case "received":
      return `All came${closedOn === undefined ? "" : ` by ${formatPlainDay(closedOn)}`}`;
    case "cancelled":
      return `Cancelled${closedOn === undefined ? "" : ` on ${formatPlainDay(closedOn)}`}${received > 0 ? `; ${formatCount(received)} had come` : ""}`;
  }
}

function dueWords(expectedOn: Day, today: Day): string {
  const late = daysBetween(expectedOn, today);
  return late > 0
    ? `due ${formatPlainDay(expectedOn)}, ${formatCounted(late, "day")} late`
    : `due ${formatPlainDay(expectedOn)}`;
}

export function amountWords({ unitCostCents, quantity, currency }: OrderLine): string {
  return unitCostCents === undefined ? "cost not known" : formatMoney({ cents: unitCostCents * quantity, currency });
}
