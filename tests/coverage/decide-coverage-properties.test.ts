// What must hold of every decision, over seeded random dates and terms.
import { describe, expect, test } from "vitest";
import { addDays, day } from "@/lib/calendar/day";
import { type CountedTerm, countedUnits } from "@/lib/calendar/term";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { knownDay, knownRange } from "@/lib/coverage/known-date";
import { payItems } from "@/lib/domain/pay-item";
import { seeded } from "../calendar/seeded";
import { sampleFacts } from "./sample-facts";
import { samplePolicy } from "./sample-policy";

const bought = (on: string) => ({ dates: { purchase: knownDay(day(on), "receipt") } });
const _recent = { unit: bought("2025-06-01") };

describe("whatever the dates", () => {
  const random = seeded(1182);
  const rounds = Array.from({ length: 3000 }, () => ({
    on: addDays(day("2005-01-01"), random(7000)),
    after: random(1500),
    term: { n: 1 + random(30), unit: countedUnits[random(3)] ?? "day" } satisfies CountedTerm,
    anchorDay: random(2) === 0 ? ("exclude" as const) : ("include" as const),
  }));
  const decide = ({ on, after, term, anchorDay }: (typeof rounds)[number]) =>
    decideCoverage(sampleFacts({ reported: addDays(on, after), completed: undefined, unit: bought(on) }), [
      samplePolicy({ anchorDay, terms: [{ covers: { kind: "whole_unit" }, pays: payItems, term }] }),
    ]);

  test("a later report never regains cover, a longer term never loses it", () => {
    for (const round of rounds) {
      const verdict = decide(round).verdict;
      if (verdict === "covered")
        expect(decide({ ...round, term: { ...round.term, n: round.term.n + 1 } }).verdict).toBe("covered");
      else expect(decide({ ...round, after: round.after + 1 }).verdict).toBe("not_covered");
    }
  });

  test("a start known as a range is decided only where both of its ends agree", () => {
    let open = 0;
    for (const { on, after, term, anchorDay } of rounds) {
      const latest = addDays(on, 30);
      const reported = addDays(latest, after + 1);
      const policies = [samplePolicy({ anchorDay, terms: [{ covers: { kind: "whole_unit" }, pays: payItems, term }] })];
      const verdictFrom = (purchase: ReturnType<typeof knownRange>) =>
        decideCoverage(sampleFacts({ reported, completed: undefined, unit: { dates: { purchase } } }), policies)
          .verdict;
      const ends = [verdictFrom(knownDay(on)), verdictFrom(knownDay(latest))];
      const expected = ends[0] === ends[1] ? ends[0] : "needs_evidence";
      if (expected === "needs_evidence") open++;
      expect(verdictFrom(knownRange({ earliest: on, latest }))).toBe(expected);
    }
    expect(open).toBeGreaterThan(20);
  });
});
