import { expect, test } from "vitest";
import { coverReach, forever } from "@/lib/claims/leaks/cover-reach";
import { samplePolicy } from "../../coverage/sample-policy";

// By hand: a year has at most 366 days and a month 31, and nine days are left for the counting of first days.
test("the reach is never shorter than the longest term of a component", () => {
  const policy = samplePolicy({
    classes: [{ key: "sealed", name: "Sealed system", members: ["compressor"] }],
    terms: [
      { covers: { kind: "whole_unit" }, pays: ["parts", "labour"], term: { n: 12, unit: "month" } },
      { covers: { kind: "class", class: "sealed" }, pays: ["parts"], term: { n: 5, unit: "year" } },
    ],
  });
  const { otherDays, days } = coverReach([policy]);
  expect(otherDays).toBe(12 * 31 + 9);
  expect(days.get("compressor")).toBe(5 * 366 + 9);
});

test("a lifetime has no end, and the company's own guarantee pays nothing", () => {
  const terms = [{ covers: { kind: "whole_unit" }, pays: ["parts"], term: { unit: "lifetime" } }] as const;
  expect(coverReach([samplePolicy({ terms })]).otherDays).toBe(forever);
  expect(coverReach([samplePolicy({ terms, payer: { kind: "own_guarantee", name: "Us" } })]).otherDays).toBe(0);
});
