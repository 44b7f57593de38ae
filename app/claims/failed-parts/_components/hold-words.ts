import { type Day, daysBetween } from "@/lib/calendar/day";
import type { PartHold } from "@/lib/claims/recovery/part-hold";
import { formatDaysLeft, formatPlainDay } from "@/lib/format/format-day";

export function holdInWords(hold: PartHold, today: Day): string {
  switch (hold.kind) {
    case "keep until":
      return `${formatPlainDay(hold.until)}, ${formatDaysLeft(daysBetween(today, hold.until))}`;
    case "keep until paid":
      return "until it is paid, and then by the payer’s clock";
    case "keep for audit":
      return "while the audit is open";
    case "may go":
      return hold.from === undefined ? "the claim was given up" : `since ${formatPlainDay(hold.from)}`;
  }
}
