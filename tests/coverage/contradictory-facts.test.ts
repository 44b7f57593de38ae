// Facts that cannot both be right decide nothing: each pair is named in a sentence that says what to check. The pair of
// purchase and manufacture is on a trade list of rejection messages; the others are common practice, no source.
import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { monthRange } from "@/lib/calendar/day-range";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { describeItem } from "@/lib/coverage/describe-coverage";
import { knownDay, knownRange } from "@/lib/coverage/known-date";
import { sampleFacts } from "./sample-facts";
import { samplePolicy } from "./sample-policy";

type Facts = NonNullable<Parameters<typeof sampleFacts>[0]>;

const bought = { purchase: knownDay(day("2025-03-14"), "receipt") };
const owner = (acquired: string, registered: string | undefined) => ({
  number: 2,
  acquiredOn: day(acquired),
  transferRegisteredOn: registered === undefined ? undefined : day(registered),
});
const made = (on: string) => ({ manufacture: knownDay(day(on)) });
const paper = (startsOn: string, endsOn: string) => ({
  number: "C1",
  policy: "plan",
  soldOn: day("2025-04-01"),
  cancelledOn: undefined,
  stated: { startsOn: day(startsOn), endsOn: day(endsOn) },
});

const contradictions: readonly (readonly [string, Facts, RegExp])[] = [
  ["bought before it was made", { unit: { dates: { ...bought, ...made("2025-03-15") } } }, /bought before it was made/],
  [
    "delivered before it was made",
    { unit: { dates: { delivery: knownDay(day("2025-03-14")), ...made("2025-03-15") } } },
    /delivered before it was made/,
  ],
  [
    "shipped before it was made",
    { unit: { dates: { shipped: knownDay(day("2025-03-01")), ...made("2025-03-02") } } },
    /shipped before it was made/,
  ],
  [
    "registered before it was made",
    { unit: { dates: { registration: knownDay(day("2025-03-01")), ...made("2025-03-02") } } },
    /registered before it was made/,
  ],
  ["reported before it was made", { unit: { dates: made("2025-11-22") } }, /reported before the unit was made/],
  ["visited before it was reported", { firstVisit: day("2025-11-20") }, /first visit lies before the report/],
  [
    "completed before the first visit",
    { firstVisit: day("2025-11-27"), completed: day("2025-11-26") },
    /completed before the first visit/,
  ],
  ["completed before it was reported", { completed: day("2025-11-20") }, /completed before the trouble was reported/],
  [
    "taken over before it was bought",
    { unit: { dates: bought, owner: owner("2025-03-13", undefined) } },
    /took it over/,
  ],
  [
    "registered before it was taken over",
    { unit: { dates: bought, owner: owner("2025-06-01", "2025-05-31") } },
    /registered before taking it over/,
  ],
  [
    "exchanged before it was bought",
    { unit: { dates: bought, exchangedOn: day("2025-03-13") } },
    /exchange before the first unit was bought/,
  ],
  [
    "back from a repair before it went there",
    { outForRepair: [{ from: day("2025-06-02"), until: day("2025-06-01") }] },
    /before it was handed over/,
  ],
  [
    "a contract that ends before it begins",
    { contracts: [paper("2026-01-01", "2025-12-31")] },
    /last day before its first/,
  ],
];

describe("facts that contradict each other", () => {
  test.each(contradictions)("%s", (_name, facts, sentence) => {
    const decision = decideCoverage(sampleFacts(facts), [samplePolicy()]);
    expect(decision.verdict).toBe("invalid_data");
    expect(describeItem(decision.items.parts)).toMatch(/^cannot be decided: /);
    expect(describeItem(decision.items.parts)).toMatch(sentence);
    expect(decision.looked.map(({ step, outcome }) => `${step} ${outcome}`)).toEqual(["data_sane stopped"]);
  });

  const borders: readonly (readonly [string, Facts])[] = [
    ["bought on the day it was made", { unit: { dates: { ...bought, ...made("2025-03-14") } } }],
    ["made in the month of purchase", { unit: { dates: { ...bought, manufacture: knownRange(monthRange(2025, 3)) } } }],
    ["visited on the day of the report", { firstVisit: day("2025-11-21") }],
    ["taken over on the day it was bought", { unit: { dates: bought, owner: owner("2025-03-14", "2025-03-14") } }],
    ["there and back on one day", { outForRepair: [{ from: day("2025-06-02"), until: day("2025-06-02") }] }],
    ["no report on file, so the visit stands in for it", { reportedIsRecorded: false, firstVisit: day("2025-11-20") }],
  ];

  test.each(borders)("%s is no contradiction", (_name, facts) => {
    expect(decideCoverage(sampleFacts(facts), [samplePolicy()]).verdict).not.toBe("invalid_data");
  });
});
