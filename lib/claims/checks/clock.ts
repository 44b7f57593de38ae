import { daysBetween } from "@/lib/calendar/day";
import { dayInWords } from "@/lib/calendar/day-words";
import { decideFiling } from "@/lib/coverage/decide-filing";
import { checkOf, type FilingCase, type FilingCheck, onJob } from "./filing-case";

/**
 * Late. Source: "over 30 days" is on a published maker's list of 1996; windows of 30, 45 and 60 days are published. A
 * corrected claim runs on a clock of its own (30 days and once or twice: common practice, no source).
 */
export function clockChecked({ given, today, clock }: FilingCase): FilingCheck {
  if (clock.kind === "again") return again(today, clock);
  const filing = given.policy.clocks.filing;
  const { completedOn } = given.record.job;
  const decision = decideFiling({ clock: filing, completedOn, actOn: today, holidays: given.holidays });
  const last = dayInWords(decision.lastDay);
  if (decision.kind === "late")
    return checkOf("clock", onJob, [
      { wrong: `The filing window ended on ${last}: ask the payer for an exception first.` },
    ]);
  const counted = filing.by === "sending" ? "counted by the day of sending" : "counted by the payer’s receipt";
  const fine = `Filed in time until ${last}, ${counted}.`;
  const isTight = filing.by === "receipt" && decision.daysLeft < daysOnTheWay;
  return checkOf("clock", onJob, [
    isTight ? { open: `${fine} It must arrive by then: choose a way that arrives the same day.` } : { fine },
  ]);
}

/** By post a claim is about this long on its way. Common practice, no source. */
const daysOnTheWay = 3;

function again(today: FilingCase["today"], clock: Extract<FilingCase["clock"], { kind: "again" }>): FilingCheck {
  const looks = [];
  if (!clock.mayFileAgain)
    looks.push({ wrong: "The policy lets it be filed no more often: appeal instead, or ask first." });
  if (clock.resubmitBy !== undefined) {
    const left = daysBetween(today, clock.resubmitBy);
    const until = dayInWords(clock.resubmitBy);
    looks.push(
      left < 0
        ? { wrong: `A corrected claim had to follow by ${until}: ask the payer for an exception first.` }
        : { fine: `A corrected claim may follow until ${until}.` },
    );
  }
  return checkOf("clock", onJob, looks);
}
