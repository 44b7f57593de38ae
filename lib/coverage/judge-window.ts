import { addDays, type Day } from "@/lib/calendar/day";
import { isExact } from "@/lib/calendar/day-range";
import { isOnOrBefore, type LastDay, lastCoveredDay } from "@/lib/calendar/term";
import type { Boundary, CoverWindow } from "./coverage-decision";

export type WindowAnswer = "inside" | "before" | "after" | "ends_differ";

/** Where the decisive day falls. With a start known only as a range both ends are asked and must agree. */
export function judgeWindow(window: CoverWindow, decisiveOn: Day): WindowAnswer {
  const { first, last } = window;
  const isPastAll = !isOnOrBefore(decisiveOn, last.latest);
  if (isPastAll) return "after";
  if (first === undefined) return "inside";
  if (decisiveOn < first.earliest) return "before";
  const isInsideBoth = decisiveOn >= first.latest && isOnOrBefore(decisiveOn, last.earliest);
  return isInsideBoth ? "inside" : "ends_differ";
}

/** On the last covered day and on the day after, counting habits differ: the reader is shown the wording. */
export function boundaryOf(window: CoverWindow, decisiveOn: Day): Boundary {
  const lastDay = window.last.earliest;
  if (!isExact(window.last) || lastDay === "lifetime" || decisiveOn < lastDay) return { kind: "none" };
  const isLast = decisiveOn === lastDay;
  if (!isLast && decisiveOn !== addDays(lastDay, 1)) return { kind: "none" };
  return { kind: isLast ? "last_day" : "day_after", lastDay, underOtherCounting: otherCounting(window) };
}

/** The end that governs, counted the other way, with the days out for repair; a written last day stays as it is. */
function otherCounting({ anchorDay, last, ends }: CoverWindow): LastDay {
  const added = ends.find(({ rule }) => rule === "tolling")?.addedDays ?? 0;
  const before = last.earliest === "lifetime" ? last.earliest : addDays(last.earliest, -added);
  const governs = ends.find((end) => end.rule !== "tolling" && end.last.earliest === before);
  if (governs?.term === undefined || governs.rule === "not_remedied") return last.earliest;
  const other = lastCoveredDay(governs.from.earliest, governs.term, anchorDay === "exclude" ? "include" : "exclude");
  return other === "lifetime" ? other : addDays(other, added);
}
