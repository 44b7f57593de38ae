import { addDays } from "@/lib/calendar/day";
import { dayFromNumber } from "@/lib/calendar/day-number";
import type { UnplacedReason } from "@/lib/failures/cells";
import type { MissingAnswer } from "@/lib/failures/missing-answer";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";

export const unplacedWords: Readonly<Record<UnplacedReason, string>> = {
  not_in_register: "named by a job and not in the register",
  no_in_service_day: "without a day on which service began",
  never_observed: "out of service before records begin",
};

/** What is missing, in one sentence, and what would bring it. */
export function missingWords(
  missing: MissingAnswer,
  question: LifeQuestion,
): { readonly finding: string; readonly wayOn: string } {
  const lastDay = formatPlainDay(addDays(dayFromNumber(question.until), -1));
  switch (missing.kind) {
    case "no-such-units":
      return {
        finding: "no unit of this view has one",
        wayOn: "Take the maker, model, appliance or symptom out of the filter.",
      };
    case "no-exposure":
      return {
        finding: "no time in service to divide by",
        wayOn: `${missing.units.map(({ reason, units }) => `${formatCounted(units, "unit")} ${unplacedWords[reason]}`).join("; ")}. A register with days of service makes rates out of these counts.`,
      };
    case "before-records":
      return {
        finding: `nothing was watched ${`up to ${lastDay}`}`,
        wayOn: `The first of these units came under watch on ${formatPlainDay(dayFromNumber(missing.firstWatchedOn))}; choose a later end.`,
      };
    case "outside-period":
      return {
        finding: "no unit was watched in this period",
        wayOn: `${formatCounted(missing.units, "unit")} of this view ${missing.units === 1 ? "was" : "were"} watched at other times; choose a longer period.`,
      };
    case "before-first-failure":
      return {
        finding: `none had failed up to ${lastDay}`,
        wayOn: `The first failure in our records was on ${formatPlainDay(dayFromNumber(missing.firstFailedOn))}; choose a later end.`,
      };
  }
}
