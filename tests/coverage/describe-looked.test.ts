import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { describeLooked } from "@/lib/coverage/describe-looked";
import { sampleFacts } from "./sample-facts";
import { samplePolicy } from "./sample-policy";

describe("every rule in words", () => {
  const policy = samplePolicy({
    classes: [{ key: "pumps", name: "Pumps", members: ["drain_pump"] }],
    terms: [
      { covers: { kind: "class", class: "pumps" }, pays: ["parts"], term: { n: 5, unit: "year" } },
      { covers: { kind: "whole_unit" }, pays: ["parts", "labour", "trip"], term: { n: 1, unit: "year" } },
    ],
    transfer: { kind: "register_within", within: { n: 90, unit: "day" } },
  });
  const owner = { number: 2, acquiredOn: day("2025-06-01"), transferRegisteredOn: day("2025-06-10") };
  const { looked } = decideCoverage(sampleFacts({ unit: { owner } }), [policy]);
  const groups = describeLooked(looked);

  test("stands under its policy, in order; items with one answer share a sentence", () => {
    // Bought 14 March 2024; 1 June 2025 + 90 days is 30 August 2025.
    expect(groups.find((group) => group.policy === policy.key)?.sentences.slice(0, 9)).toEqual([
      "Start: from purchase.",
      "Term, parts: covered, last day 14 Mar 2029.",
      "Term, labour and trip: the term has ended, last day 14 Mar 2025.",
      "Term, diagnosis: the terms do not pay this item.",
      "Use: nothing stands in the way.",
      "Where it stands: nothing stands in the way.",
      "Owner: nothing stands in the way, by 30 Aug 2025.",
      "Cause and component: nothing stands in the way.",
      "Who pays: nothing stands in the way.",
    ]);
  });

  test("begins with the data and ends with the law", () => {
    expect(groups[0]).toEqual({ policy: undefined, sentences: ["Dates and serial: nothing stands in the way."] });
    expect(groups.at(-1)?.sentences.at(-1)).toMatch(/^Local law: statutory rights/);
  });

  test("leaves out no rule", () => {
    expect(groups.flatMap(({ sentences }) => sentences).length).toBeGreaterThanOrEqual(
      new Set(looked.map(({ step }) => step)).size,
    );
    for (const { sentences } of groups) for (const sentence of sentences) expect(sentence).not.toContain("_");
  });
});
