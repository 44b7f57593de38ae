// California Civil Code 1795.6: (a) the term stands still while goods are out for repair, for goods that stay in the home
// from the buyer's notice to the end of the repair; (b) it does not end while a repair did not help and the buyer said so
// within 60 days. The second is read the same way by the Judicial Council's instruction CACI 3231. For information:
// local law and the policy wording decide.
import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import type { RepairSpan } from "@/lib/coverage/coverage-facts";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { describeCoverage } from "@/lib/coverage/describe-coverage";
import { knownDay } from "@/lib/coverage/known-date";
import type { Policy } from "@/lib/domain/policy";
import { sampleFacts } from "./sample-facts";
import { samplePolicy } from "./sample-policy";

interface Asked {
  readonly reported: string;
  readonly repairs: readonly RepairSpan[];
  readonly territory?: string;
  readonly policy?: Partial<Policy>;
}

/** Bought 10 Jan 2025, one year: ends 10 Jan 2026. */
function decide({ reported, repairs, territory = "US-CA", policy = {} }: Asked) {
  const on = day(reported);
  const facts = sampleFacts({
    reported: on,
    firstVisit: on,
    completed: on,
    outForRepair: repairs,
    unit: { territory, dates: { purchase: knownDay(day("2025-01-10"), "receipt") } },
  });
  return decideCoverage(facts, [samplePolicy(policy)]);
}

function repair(from: string, until: string, sameTrouble = true): RepairSpan {
  return { from: day(from), until: day(until), sameTrouble };
}

// 1 to 5 January 2026: five days are added, so the term ends on 15 January. 5 January + 60 days = 6 March.
const oneRepair = [repair("2026-01-01", "2026-01-05")];

describe("a repair that did not help keeps the term alive", () => {
  test.each([
    ["the last day with time out for repair added", "2026-01-15", "covered"],
    ["the day after, the same trouble", "2026-01-16", "covered"],
    ["sixty days after the repair", "2026-03-06", "covered"],
    ["sixty-one days after the repair", "2026-03-07", "not_covered"],
  ])("%s, %s: %s", (_name, reported, verdict) => {
    expect(decide({ reported, repairs: oneRepair }).verdict).toBe(verdict);
  });

  test("another trouble ends with the term", () => {
    const repairs = [repair("2026-01-01", "2026-01-05", false)];
    expect(decide({ reported: "2026-01-15", repairs }).verdict).toBe("covered");
    expect(decide({ reported: "2026-01-16", repairs }).verdict).toBe("not_covered");
  });

  test("a repair after the term had ended keeps nothing alive", () => {
    expect(decide({ reported: "2026-03-01", repairs: [repair("2026-02-01", "2026-02-03")] }).verdict).toBe(
      "not_covered",
    );
  });

  // 6 March (day 60) begins a second repair, done on 10 March; 10 March + 60 days = 9 May.
  test("one repair may follow on another while each was notified in time", () => {
    const repairs = [...oneRepair, repair("2026-03-06", "2026-03-10")];
    expect(decide({ reported: "2026-05-09", repairs }).verdict).toBe("covered");
    expect(decide({ reported: "2026-05-10", repairs }).verdict).toBe("not_covered");
    const late = [...oneRepair, repair("2026-03-07", "2026-03-10")];
    expect(decide({ reported: "2026-05-09", repairs: late }).verdict).toBe("not_covered");
  });

  test("it is said with its law's own words for the days", () => {
    const words = describeCoverage(decide({ reported: "2026-02-01", repairs: oneRepair }));
    expect(words.arithmetic[0]).toContain(
      "Repaired 5 Jan 2026 without remedy and reported again within 60 days: runs on for this defect until it is put right, 1 Feb 2026.",
    );
  });
});

test.each([
  ["another state", { territory: "US-NV" }],
  // Gavaldon v. DaimlerChrysler Corp. (2004) 32 Cal.4th 1246, from memory: a service contract is no express warranty.
  [
    "a service contract",
    {
      policy: { payer: { kind: "contract", name: "Plan company" }, contract: { type: "extended" } } as Partial<Policy>,
    },
  ],
])("%s is not reached", (_name, changes) => {
  expect(decide({ reported: "2026-01-16", repairs: oneRepair, ...changes }).verdict).toBe("not_covered");
});

test("two spans that share days count each day once", () => {
  // 1 to 5 and 4 to 8 January: eight days, so 10 January becomes 18 January.
  const repairs = [repair("2026-01-01", "2026-01-05", false), repair("2026-01-04", "2026-01-08", false)];
  expect(decide({ reported: "2026-01-18", repairs }).verdict).toBe("covered");
  expect(decide({ reported: "2026-01-19", repairs }).verdict).toBe("not_covered");
});
