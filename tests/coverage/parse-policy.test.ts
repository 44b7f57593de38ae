import { expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import type { Policy } from "@/lib/domain/policy";
import { parsePolicies, policiesSchemaName } from "@/lib/intake/parse-policies";
import { parsePolicy } from "@/lib/intake/parse-policy";
import { policyJsonSchema } from "@/lib/intake/policy-json-schema";
import { samplePolicy } from "./sample-policy";

const complete = samplePolicy({ maker: "Maker" });

function document(changes: Record<string, unknown> = {}): unknown {
  return { ...JSON.parse(JSON.stringify(complete)), ...changes };
}

function problemsOf(changes: Record<string, unknown>) {
  const parsed = parsePolicy(document(changes));
  return parsed.ok ? [] : parsed.problems;
}

test("a policy written as JSON and read again is the same policy", () => {
  expect(parsePolicy(document())).toEqual({ ok: true, policy: complete });
});

test("a policy that uses every rule comes back whole", () => {
  const full: Policy = {
    ...complete,
    effectiveTo: day("2025-12-31"),
    start: { from: { event: "installation" }, fallbacks: [{ event: "manufacture", plus: { n: 3, unit: "month" } }] },
    classes: [{ key: "tub", name: "Tub", members: ["tub"] }],
    terms: [
      { covers: { kind: "class", class: "tub" }, pays: ["parts"], term: { unit: "lifetime" } },
      {
        covers: { kind: "cosmetic" },
        pays: ["parts"],
        term: { n: 30, unit: "day" },
        from: { event: "delivery" },
        anchorDay: "include",
      },
    ],
    caps: [{ from: "manufacture", term: { n: 18, unit: "month" } }],
    registration: {
      within: { n: 60, unit: "day" },
      termIfRegistered: { n: 2, unit: "year" },
      termOtherwise: { n: 1, unit: "year" },
    },
    transfer: { kind: "register_within", within: { n: 90, unit: "day" } },
    use: { kind: "commercial_term", term: { n: 90, unit: "day" }, pays: ["parts"] },
    replacementPart: {
      kind: "own_term",
      term: { n: 90, unit: "day" },
      pays: ["parts"],
      combine: "later_of_with_remainder",
    },
    excludedCauses: ["surge_lightning"],
    campaigns: [
      {
        key: "c",
        name: "C",
        serials: [{ from: "A1", to: "A9" }],
        component: "drain_pump",
        endsOn: day("2027-12-31"),
        pays: ["parts"],
        sourceDocument: "Notice",
      },
    ],
    repeat: { within: { n: 30, unit: "day" }, same: "component_or_complaint" },
    goodwill: { authorizationRequired: true, within: { n: 60, unit: "day" } },
  };
  expect(parsePolicy(JSON.parse(JSON.stringify(full)))).toEqual({ ok: true, policy: full });
});

test.each([
  [{ version: 0 }, "/version"],
  [{ key: "Maker Standard" }, "/key"],
  [{ effectiveFrom: "2023-02-29" }, "/effectiveFrom"],
  [{ effectiveTo: "1800-01-01" }, "/effectiveTo"],
  [{ currency: "QQQ" }, "/currency"],
  [{ maker: undefined }, "/maker"],
  [{ caps: [{ from: "maker_cover_end", term: { n: 1, unit: "year" } }] }, "/caps/0/from"],
  [{ payer: { kind: "contract", name: "P" } }, "/contract"],
  [
    { terms: [{ covers: { kind: "class", class: "none" }, pays: ["parts"], term: { n: 1, unit: "year" } }] },
    "/terms/0/covers/class",
  ],
  [{ terms: [{ covers: { kind: "whole_unit" }, pays: [], term: { n: 1, unit: "year" } }] }, "/terms/0/pays"],
  [{ territories: ["Utah"] }, "/territories/0"],
  [{ excludedCauses: ["sunspots"] }, "/excludedCauses/0"],
  [{ "a/b~c": 1 }, "/a~1b~0c"],
])("%j is refused at its place", (changes, pointer) => {
  expect(problemsOf(changes).map((problem) => problem.pointer)).toContain(pointer);
});

test("all problems come at once, not only the first", () => {
  expect(problemsOf({ version: 0, currency: "QQQ", tolling: "no" })).toHaveLength(3);
});

test.each([null, 7, "policy", []])("%j is no policy and throws nothing", (nonsense) => {
  expect(parsePolicy(nonsense).ok).toBe(false);
});

test("two versions that govern one sale date are refused", () => {
  const file = (second: Record<string, unknown>) =>
    parsePolicies({
      schema: policiesSchemaName,
      policies: [document({ effectiveTo: "2023-12-31" }), document(second)],
    });
  expect(file({ version: 2, effectiveFrom: "2024-01-01" }).ok).toBe(true);
  const refused = file({ version: 2, effectiveFrom: "2023-12-31" });
  expect(refused.ok ? [] : refused.problems.map((problem) => problem.pointer)).toEqual(["/policies/1/effectiveFrom"]);
});

test("the published schema names every field and forbids others", () => {
  const schema = policyJsonSchema() as { properties: object; required: string[]; additionalProperties: boolean }; // an object schema
  expect(Object.keys(schema.properties)).toEqual(expect.arrayContaining(Object.keys(complete)));
  expect(schema.additionalProperties).toBe(false);
  expect(schema.required).not.toContain("goodwill");
});
