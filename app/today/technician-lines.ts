import type { AskLine, OpenJobLine } from "@/db/queries/sheet-lists";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { symptomOf } from "@/lib/domain/symptoms";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import type { DueLine } from "./due-lines";

/** What technicians have to do: each thing that the desk asks of them, and one line for their open jobs. */
export function technicianLines(
  asks: readonly AskLine[],
  open: readonly OpenJobLine[],
  today: Day,
): readonly DueLine[] {
  const asked = asks.map(({ jobNumber, item, label, technician, askedOn }): DueLine => {
    const days = Math.max(0, daysBetween(askedOn, today));
    return {
      key: `ask ${jobNumber} ${item}`,
      status: "watch",
      act: `${technician ?? "Technician"}: give “${label}” for job ${jobNumber}`,
      href: `/sheet/asked/${encodeURIComponent(jobNumber)}`,
      reason: `the claim lacks it — asked ${formatDay(askedOn)}${days === 0 ? "" : `, ${formatCounted(days, "day")} ago`}`,
      urgentClaims: 0,
    };
  });
  const [oldest] = open;
  if (oldest === undefined) return asked;
  return [
    ...asked,
    {
      key: "open jobs",
      status: "note",
      act: `Work ${formatCounted(open.length, "open job")} by the check sheet`,
      href: "/sheet",
      reason: `the oldest, ${oldest.jobNumber}: ${symptomOf(oldest.symptom)?.name.toLowerCase() ?? oldest.symptom}, asked for ${formatDay(oldest.requestedOn)}`,
      urgentClaims: 0,
    },
  ];
}
