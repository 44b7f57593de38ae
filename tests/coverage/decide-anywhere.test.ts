// No order of facts or policies, no time zone and no clock changes a decision: days are plain, and nothing here reads a clock.
import { afterEach, describe, expect, test, vi } from "vitest";
import { day } from "@/lib/calendar/day";
import type { CoverageFacts } from "@/lib/coverage/coverage-facts";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import type { Policy } from "@/lib/domain/policy";
import { demoPolicies } from "../../synthetic-data/plan-policies";
import { seeded } from "../calendar/seeded";
import { answerCase } from "./answer-case";
import { caseFacts } from "./case-facts";
import { casePolicies } from "./case-policy";
import { loadCoverageCases } from "./coverage-case";

const cases = [...loadCoverageCases("coverage-cases"), ...loadCoverageCases("coverage-variants")];
const answers = () => cases.map(answerCase);
const zoneBefore = process.env.TZ;

afterEach(() => {
  vi.useRealTimers();
  if (zoneBefore === undefined) delete process.env.TZ;
  else process.env.TZ = zoneBefore;
});

describe("the same answers to every case", () => {
  const expected = answers();
  test.each(["UTC", "America/Los_Angeles", "Pacific/Kiritimati", "Asia/Kolkata"])("in the zone %s", (zone) => {
    process.env.TZ = zone;
    expect(new Date(0).getTimezoneOffset() === 0).toBe(zone === "UTC");
    expect(answers()).toEqual(expected);
  });

  test.each(["1999-12-31T23:59:59Z", "2026-03-08T10:00:00Z", "2099-06-01T00:00:00Z"])("at %s by the clock", (now) => {
    vi.useFakeTimers({ now: new Date(now) });
    expect(answers()).toEqual(expected);
  });
});

/** Objects with their keys in another order, lists of facts in another order. */
function reordered<T>(value: T, random: (limit: number) => number, isFacts: boolean): T {
  if (Array.isArray(value)) {
    const items = value.map((item) => reordered(item, random, isFacts));
    return (isFacts ? shuffled(items, random) : items) as T; // the same items
  }
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).map(([key, item]) => [key, reordered(item, random, isFacts)] as const);
  return Object.fromEntries(shuffled(entries, random)) as T; // the same keys
}

function shuffled<T>(items: readonly T[], random: (limit: number) => number): T[] {
  const left = [...items];
  return items.map(() => left.splice(random(left.length), 1)[0] as T); // one is left for each
}

describe("the same decision in any order", () => {
  const repairs: Partial<CoverageFacts> = {
    outForRepair: [
      { from: day("2025-01-03"), until: day("2025-01-20"), sameTrouble: true },
      { from: day("2025-01-15"), until: day("2025-02-02"), sameTrouble: false },
      { from: day("2025-03-01"), until: day("2025-03-03"), sameTrouble: true },
    ],
  };
  const asked = cases
    .filter(({ policy }) => policy.claim_window === undefined && policy.repeat_rule === undefined)
    .map((given) => ({
      id: given.id,
      facts: { ...caseFacts(given), ...repairs },
      policies: [...casePolicies(given), ...demoPolicies()],
    }));

  test.each(asked)("$id, ten orders of facts, keys and policies", ({ facts, policies }) => {
    const random = seeded(facts.reported.length + policies.length);
    const { looked: _, ...expected } = decideCoverage(facts, policies);
    for (let round = 0; round < 10; round++) {
      const others: readonly Policy[] = shuffled(
        policies.map((policy) => reordered(policy, random, false)),
        random,
      );
      const { looked: __, ...decision } = decideCoverage(reordered(facts, random, true), others);
      expect(decision).toEqual(expected);
    }
  });
});
