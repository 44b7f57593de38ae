// The catalogue against itself and against the 64 published entries. Source of the entries' texts, ranges and tags:
// published-entries.json, the trade's table with a source tag on every entry (its own `sources` names each paper).
import { expect, test } from "vitest";
import { causes } from "@/lib/domain/cause";
import { componentOf, componentPath, components } from "@/lib/domain/components";
import { failureModeOf } from "@/lib/domain/failure-modes";
import { symptomOf } from "@/lib/domain/symptoms";
import { cautions } from "@/lib/evidence/cautions";
import { checkOf, checks } from "@/lib/evidence/checks";
import type { Condition } from "@/lib/evidence/condition";
import { entries, entriesFor, entryOf } from "@/lib/evidence/entries";
import published from "./published-entries.json";

const kinds: Readonly<Record<string, string>> = {
  "front-load washer": "front_load_washer",
  "top-load washer": "top_load_washer",
  "electric dryer": "electric_dryer",
  "gas dryer": "gas_dryer",
  dishwasher: "dishwasher",
  refrigerator: "refrigerator",
  "range/oven": "range_oven",
};

test("there is one entry for each of the 64 published ones, and one more for the harness row of the no-drain table", () => {
  expect(published.entries).toHaveLength(64);
  expect(entries.map(({ id }) => id).sort()).toEqual([...published.entries.map(({ id }) => id), "FL-HARNESS"].sort());
});

test.each(published.entries)("$id keeps its appliance, component, texts, sources and tag", (source) => {
  const entry = entryOf(source.id);
  expect(entry).toMatchObject({
    productType: kinds[source.appliance],
    component: source.component,
    failure: source.failure_mode,
    failureClass: source.failure_class,
    sourceTag: source.source_tag,
    sources: source.sources,
  });
  const texts = entry?.contradictedBy.map(({ text }) => text) ?? [];
  expect(texts).toEqual(expect.arrayContaining(source.contradicted_by));
  const exclusions = entry?.notCoveredIf.map(({ text }) => text) ?? [];
  expect(exclusions).toEqual(expect.arrayContaining(source.not_covered_if));
  const needs = entry?.minimumEvidence.map(({ text }) => text) ?? [];
  expect(needs).toEqual(expect.arrayContaining(source.minimum_evidence));
});

test.each(entries)(
  "$id asks for at least as many checks as it has published steps of its own kind, and names only what exists",
  (entry) => {
    expect(componentOf(entry.component)?.productTypes).toContain(entry.productType);
    for (const mode of entry.failureModes) expect(failureModeOf(mode), mode).toBeDefined();
    for (const symptom of entry.symptoms)
      expect(symptomOf(symptom)?.productTypes, symptom).toContain(entry.productType);
    for (const { cause } of entry.notCoveredIf) expect(causes[cause].kind).toBe("outside");
    const conditions = [
      entry.proof,
      ...entry.contradictedBy.map(({ when }) => when),
      ...entry.notCoveredIf.map(({ when }) => when),
      ...entry.minimumEvidence.flatMap(({ need }) => (need.kind === "reading" ? [need.when] : [])),
    ];
    for (const key of [...entry.steps.flat(), ...conditions.flatMap(checksIn)]) expect(checkOf(key), key).toBeDefined();
    for (const [key, word] of conditions.flatMap(wordsIn))
      expect(Object.keys(checkOf(key)?.findings ?? {}), key).toContain(word);
    for (const { onlyFor = [] } of entry.contradictedBy)
      expect(entry.failureModes).toEqual(expect.arrayContaining([...onlyFor]));
  },
);

test("keys are unique, and every group in the tree of components exists", () => {
  for (const keys of [components.map(({ key }) => key), checks.map(({ key }) => key)])
    expect(new Set(keys).size).toBe(keys.length);
  for (const { partOf } of components) if (partOf !== undefined) expect(componentOf(partOf), partOf).toBeDefined();
  expect(componentPath("drain_pump")).toEqual(["drain_pump", "drain_system"]);
  expect(componentPath("no_such_part")).toEqual([]);
});

// Law: 29 CFR 1910.333(a)(1) and (c), live work by qualified persons; the rest of the cautions carry their basis themselves.
test.each(checks)("$key carries the cautions of its power state and says that the sheet decides", (check) => {
  expect(check.cautions).toContain("sheet_decides");
  if (check.energy === "live") expect(check.cautions).toEqual(expect.arrayContaining(["live_work", "de_energize"]));
  if (check.energy === "off") expect(check.cautions).toEqual(expect.arrayContaining(["control_plug", "prove_dead"]));
  for (const caution of check.cautions) expect(cautions[caution].basis).not.toBe("");
  for (const range of check.general) expect(range.source).not.toBe("");
});

test("an observation has its list of words, an outside word its outside cause, and gas and refrigerant their own cautions", () => {
  for (const check of checks) {
    if (check.modes[0] === "observation" && check.unit === undefined)
      expect(Object.keys(check.findings), check.key).not.toHaveLength(0);
    for (const { state, cause } of Object.values(check.findings)) {
      expect(state === "outside", check.key).toBe(cause !== undefined && causes[cause].kind === "outside");
    }
  }
  for (const key of ["gas_pressure", "igniter_voltage", "oven_igniter_current", "gas_leak_test"])
    expect(checkOf(key)?.cautions).toContain("gas");
  for (const key of ["system_pressure", "refrigerant_charged", "leak_location"])
    expect(checkOf(key)?.cautions).toContain("refrigerant");
  expect(checkOf("run_capacitor")?.cautions).toContain("discharge_capacitors");
});

// Published good pumps: DC 1.5-4 ohm per winding, AC 10-20, about 106 ohm. One threshold at 50 ohm would condemn the last.
test("no general range of a winding decides: one threshold for all pumps would condemn good ones", () => {
  const windings = checks.filter(({ key }) => key.includes("winding") && key !== "winding_to_ground");
  expect(windings.length).toBeGreaterThan(3);
  for (const { general } of windings) for (const range of general) expect(range.screensOnly).toBe(true);
});

test("a gas dryer's drum motor uses the electric dryer's rules, its coils its own, and a washer's dryer part has none", () => {
  expect(entriesFor("gas_dryer", "drive_motor").map(({ id }) => id)).toEqual(["ED-MOTOR"]);
  expect(entriesFor("gas_dryer", "gas_valve_coils").map(({ id }) => id)).toEqual(["GD-COIL"]);
  expect(entriesFor("front_load_washer", "gas_valve_coils")).toEqual([]);
});

function checksIn(condition: Condition): readonly string[] {
  switch (condition.is) {
    case "all":
    case "any":
      return condition.of.flatMap(checksIn);
    case "not":
      return checksIn(condition.of);
    case "by_policy":
      return [];
    default:
      return [condition.check];
  }
}

function wordsIn(condition: Condition): readonly (readonly [string, string])[] {
  switch (condition.is) {
    case "all":
    case "any":
      return condition.of.flatMap(wordsIn);
    case "not":
      return wordsIn(condition.of);
    case "word":
      return condition.words.map((word) => [condition.check, word] as const);
    default:
      return [];
  }
}
