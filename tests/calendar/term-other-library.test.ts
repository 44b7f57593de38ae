// Sums of days against another library's: @js-joda/core 6.3.2, whose plusMonths and plusDays share no code with ours.
// It clamps a missing day to the last of its month, as the law of the excluded day does (Dodds v Walker [1981] UKHL).
import { LocalDate } from "@js-joda/core";
import { describe, expect, test } from "vitest";
import { addDays, day } from "@/lib/calendar/day";
import { type AnchorDay, type CountedTerm, countedUnits, lastCoveredDay } from "@/lib/calendar/term";
import { seeded } from "./seeded";

const rounds = 20_000;

/** Excluded: start plus the term. Included: the day before it, but a clamped end is the end already. */
function byOtherLibrary(start: string, { n, unit }: CountedTerm, anchorDay: AnchorDay): string {
  const from = LocalDate.parse(start);
  const end = unit === "day" ? from.plusDays(n) : from.plusMonths(unit === "year" ? 12 * n : n);
  const isClamped = unit !== "day" && end.dayOfMonth() !== from.dayOfMonth();
  return (anchorDay === "include" && !isClamped ? end.minusDays(1) : end).toString();
}

describe.each(["exclude", "include"] as const)("the first day: %s", (anchorDay) => {
  test.each(countedUnits)(`${rounds} random terms in %ss agree`, (unit) => {
    const random = seeded(anchorDay === "exclude" ? 30 : 187);
    const most = { day: 4000, month: 240, year: 40 }[unit];
    const wrong: string[] = [];
    for (let round = 0; round < rounds; round++) {
      const start = addDays(day("1980-01-01"), random(25_000));
      const term = { n: 1 + random(most), unit };
      const ours = lastCoveredDay(start, term, anchorDay);
      const theirs = byOtherLibrary(start, term, anchorDay);
      if (ours !== theirs) wrong.push(`${start} + ${term.n} ${unit}: ${ours}, not ${theirs}`);
    }
    expect(wrong).toEqual([]);
  });
});
