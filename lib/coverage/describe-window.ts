import { type Day, daysBetween } from "@/lib/calendar/day";
import { countOf, dayInWords, daysInWords, termInWords } from "@/lib/calendar/day-words";
import type { DecisiveEvent } from "@/lib/domain/policy-start";
import type { CoverWindow, EndConsidered, StartFound } from "./coverage-decision";
import { judgeWindow } from "./judge-window";

/**
 * The sum in words: "Bought 14 Mar 2024 (receipt) + 24 months = 14 Mar 2026. Reported 21 Nov 2025: inside by 113 days."
 * Checked: tests/coverage/describe-coverage.test.ts.
 */
export function describeWindow(
  window: CoverWindow,
  decisive: { readonly event: DecisiveEvent; readonly on: Day } | undefined,
): string {
  const sums = window.ends.map((end, index) => endInWords(end, window, index === 0));
  const first = sums.length > 0 ? sums : [`Covered through ${daysInWords(window.last)}.`];
  const tested =
    decisive === undefined
      ? []
      : [`${eventWords[decisive.event]} ${dayInWords(decisive.on)}: ${placeInWords(window, decisive.on)}.`];
  return [...first, ...governing(window), ...waiting(window), ...tested].join(" ");
}

function endInWords(end: EndConsidered, window: CoverWindow, isFirst: boolean): string {
  const last = daysInWords(end.last);
  if (end.rule === "not_remedied") {
    return `Repaired ${daysInWords(end.from)} without remedy and reported again within ${end.term === undefined ? "time" : termInWords(end.term)}: runs on for this defect until it is put right, ${last}.`;
  }
  if (end.rule === "contract_paper") return `Its paper states the last day: ${last}.`;
  if (end.rule === "tolling") return `Out for repair, ${countOf(end.addedDays ?? 0, "day")} added = ${last}.`;
  const term = end.term === undefined ? "" : ` + ${termInWords(end.term)}`;
  const counted = window.anchorDay === "include" ? ", counted as day 1," : "";
  return `${fromInWords(end, window, isFirst)}${counted}${term} = ${last}.`;
}

function fromInWords(end: EndConsidered, { start }: CoverWindow, isFirst: boolean): string {
  if (end.rule === "cap") return `Limit from ${daysInWords(end.from)}`;
  if (end.rule === "replacement_part") return `Part fitted ${daysInWords(end.from)}`;
  if (!isFirst || start === undefined || start.on.earliest !== end.from.earliest)
    return `From ${daysInWords(end.from)}`;
  const paper = start.seenIn === undefined ? "" : ` (${start.seenIn})`;
  return `${startWords[start.event]} ${daysInWords(start.on)}${paper}`;
}

/** Where more than one end was compared, say which governs. */
function governing({ ends, last }: CoverWindow): readonly string[] {
  const final = ends.at(-1)?.rule;
  if (ends.length < 2 || final === "tolling" || final === "not_remedied") return [];
  return [`Of these ${daysInWords(last)} governs.`];
}

function waiting({ first, start }: CoverWindow): readonly string[] {
  if (first === undefined || start === undefined || first.earliest === start.on.earliest) return [];
  return [`Cover opens ${daysInWords(first)}, after the waiting period.`];
}

function placeInWords(window: CoverWindow, on: Day): string {
  const { earliest, latest } = window.last;
  switch (judgeWindow(window, on)) {
    case "inside":
      if (earliest === "lifetime") return "inside, without end";
      return on === earliest ? "inside, on the last day" : `inside by ${countOf(daysBetween(on, earliest), "day")}`;
    case "after":
      return latest === "lifetime" ? "outside" : `outside by ${countOf(daysBetween(latest, on), "day")}`;
    case "before":
      return window.first === undefined
        ? "outside"
        : `${countOf(daysBetween(on, window.first.earliest), "day")} before cover begins`;
    case "ends_differ":
      return "inside under one of the two ends and outside under the other";
  }
}

const eventWords: Readonly<Record<DecisiveEvent, string>> = {
  reported: "Reported",
  visit: "First visit",
  completed: "Completed",
};

const startWords: Readonly<Record<StartFound["event"], string>> = {
  purchase: "Bought",
  delivery: "Delivered",
  installation: "Installed",
  occupancy: "Occupied",
  first_use: "First used",
  registration: "Registered",
  shipped: "Shipped to the distributor",
  manufacture: "Made, with the grace that the policy gives,",
  contract_sale: "Contract sold",
  maker_cover_end: "Maker's cover over, contract from",
  previous_repair: "Repaired",
  replacement_part: "Part fitted",
  campaign: "Campaign from",
  exchange: "Exchanged",
  contract_paper: "Contract begins, as its paper states,",
};
