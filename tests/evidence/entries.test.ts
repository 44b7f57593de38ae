// Every entry decides: a record built from its own definition proves it, takes away one item and it is missing, adds one
// finding of its lists and it is contradicted or outside. What each list holds is checked in catalogue.test.ts.
import { describe, expect, test } from "vitest";
import { type PhotoSubject, photoSubjects } from "@/lib/domain/job";
import type { Reading } from "@/lib/domain/reading";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import { checkOf } from "@/lib/evidence/checks";
import type { Condition } from "@/lib/evidence/condition";
import { entries } from "@/lib/evidence/entries";
import type { EvidenceEntry } from "@/lib/evidence/entry";
import { provingReadings } from "@/lib/evidence/proving-readings";
import { jobRecord, plainReading } from "./job-record";

const allPhotos = (Object.keys(photoSubjects) as readonly PhotoSubject[]) // Object.keys loses the key type
  .filter((subject) => !["foreign_object", "kinked_hose", "suds"].includes(subject));

const partEntries = entries.filter(({ failureClass }) => failureClass !== "external");

describe.each(partEntries)("$id", (entry) => {
  test("is proven by its own minimal record, every item naming where it was found", () => {
    const check = checkEvidence(proving(entry), []);
    expect(check).toMatchObject({ kind: "proven", entryId: entry.id, contradictions: [], outside: [] });
    for (const item of check.items) {
      expect(item.foundIn.length > 0, item.label).toBe(item.state === "in_place");
      expect(item.mark).toBe(entry.mark);
    }
  });

  test("is missing without readings, and says for each item what would fix it", () => {
    const check = checkEvidence({ ...proving(entry), readings: [] }, []);
    expect(check.kind).toBe("missing");
    const missing = check.items.filter(({ state }) => state === "missing");
    expect(missing.map(({ key }) => key)).toContain("proof");
    for (const item of missing) expect(item.whatWouldFixIt).not.toBe("");
  });

  test("is missing without its photos", () => {
    const check = checkEvidence({ ...proving(entry), attachments: [] }, []);
    expect(check.kind).toBe("missing");
    expect(check.items.find(({ key }) => key === "photo:plate")).toMatchObject({
      state: "missing",
      canStillBeHad: true,
    });
  });

  test("each required check is needed: without it the record is no longer proven", () => {
    for (const step of entry.steps) {
      const record = proving(entry);
      const kept = record.readings.filter(({ check }) => !step.includes(check));
      expect(checkEvidence({ ...record, readings: kept }, []).kind, step.join(" or ")).not.toBe("proven");
    }
  });

  test("is contradicted when the job itself is closed without a fault", () => {
    const record = proving(entry);
    const check = checkEvidence({ ...record, job: { ...record.job, cause: "no_fault_found" } }, []);
    expect(check.kind).toBe("contradicted");
    expect(check.contradictions).toEqual([{ by: undefined, why: expect.stringContaining("No fault found") }]);
  });

  test("is outside the part when the job itself is closed with an outside cause", () => {
    const record = proving(entry);
    const check = checkEvidence({ ...record, job: { ...record.job, cause: "commercial_use" } }, []);
    expect(check).toMatchObject({ kind: "outside_cause", outside: [{ cause: "commercial_use" }] });
  });
});

const contradictions = partEntries.flatMap((entry) =>
  entry.contradictedBy.map((against) => ({ entry, against, name: `${entry.id}: ${against.text}` })),
);

test.each(contradictions)("$name", ({ entry, against }) => {
  const record = proving(entry);
  const readings = satisfying(record.readings, against.when, entry);
  const check = checkEvidence(
    { ...record, readings, job: { ...record.job, failureMode: against.onlyFor?.[0] ?? record.job.failureMode } },
    [],
  );
  expect(["contradicted", "outside_cause"]).toContain(check.kind);
  const found = check.contradictions.filter(({ why }) => why === against.text);
  expect(found.length).toBeGreaterThan(0);
  for (const { by } of found) expect(readings.map(({ number }) => number)).toContain(by);
});

const exclusions = entries.flatMap((entry) =>
  entry.notCoveredIf
    .filter(({ when }) => when.is !== "by_policy")
    .map((exclusion) => ({ entry, exclusion, name: `${entry.id}: ${exclusion.cause}, ${exclusion.text}` })),
);

test.each(exclusions)("$name", ({ entry, exclusion }) => {
  const record = proving(entry);
  const check = checkEvidence({ ...record, readings: satisfying(record.readings, exclusion.when, entry) }, []);
  expect(check.kind).toBe("outside_cause");
  expect(check.outside.map(({ cause }) => cause)).toContain(exclusion.cause);
});

function proving(entry: EvidenceEntry) {
  return jobRecord({
    productType: entry.productType,
    job: { component: entry.component, failureMode: entry.failureModes[0], authorizationNumber: "A-100" },
    readings: provingReadings(entry),
    photos: allPhotos,
    fitted: entry.component,
  });
}

/** The readings, with those that the condition speaks of replaced so that it holds. Written apart from lib/evidence. */
function satisfying(readings: readonly Reading[], condition: Condition, entry: EvidenceEntry): readonly Reading[] {
  switch (condition.is) {
    case "all":
      return condition.of.reduce((kept, part) => satisfying(kept, part, entry), readings);
    case "any": {
      const [first] = condition.of;
      return first === undefined ? readings : satisfying(readings, first, entry);
    }
    case "not": {
      const inner = condition.of;
      const isHeld = "check" in inner && readings.some(({ check }) => check === inner.check);
      return isHeld && "check" in inner ? readings.filter(({ check }) => check !== inner.check) : readings;
    }
    case "by_policy":
      return readings;
    default: {
      const others = readings.filter(({ check }) => check !== condition.check);
      const next = Math.max(0, ...readings.map(({ number }) => number)) + 1;
      return [...others, ...made(condition, entry).map((reading, index) => ({ ...reading, number: next + index }))];
    }
  }
}

type CheckCondition = Extract<Condition, { readonly check: string }>;

function made(condition: CheckCondition, entry: EvidenceEntry): readonly Reading[] {
  const check = checkOf(condition.check);
  if (check === undefined) throw new RangeError(`no check ${condition.check}`);
  const isObserved = Object.keys(check.findings).length > 0;
  const word = (state: "good" | "bad") =>
    Object.entries(check.findings).find(([, finding]) => finding.state === state)?.[0] ?? "";
  const insulation = condition.check.includes("_to_");
  const base = plainReading({
    check: condition.check,
    outcome: { kind: "no_reading" },
    mode: check.modes[0],
    power: check.energy,
    loadConnected: true,
    commanded: true,
    temperatureC: check.notAboveC === undefined ? 25 : check.notAboveC - 5,
    sheetLow: insulation ? 1e6 : 10,
    sheetHigh: insulation ? undefined : 20,
  });
  const number = (value: number): Reading => ({ ...base, outcome: { kind: "number", value, unit: check.unit ?? "" } });
  const finding = (text: string): Reading => ({
    ...base,
    mode: "observation",
    outcome: { kind: "finding", word: text },
  });
  const triple = (...values: readonly number[]) =>
    values.map((value, index) => ({ ...number(value), pointA: `${index}`, pointB: `${(index + 1) % 3}` }));
  switch (condition.is) {
    case "word":
      return [finding(condition.words[0] ?? "")];
    case "good":
      return [isObserved ? finding(word("good")) : number(insulation ? 5e6 : 15)];
    case "bad":
      return [isObserved ? finding(word("bad")) : number(insulation ? 500 : 2)];
    case "absent":
      return [number(0)];
    case "open":
      return [{ ...base, outcome: { kind: "open" } }];
    case "equal":
      return triple(15, 15.2, 15.1);
    case "unequal":
      return triple(11, 15, 19);
    case "sum_holds":
      return triple(10, 10, 20);
    case "sum_fails":
      return triple(10, 10, 14);
    case "worthless":
      return [
        {
          ...number(15),
          isolated: !condition.rules.includes("in_circuit"),
          loadConnected: !condition.rules.includes("load_off"),
          temperatureC: condition.rules.includes("too_warm") ? 20 : undefined,
        },
      ];
    case "taken":
    case "decided":
    case "with_temperature":
    case "three":
      return [number(15)];
  }
  throw new RangeError(`${entry.id}: no example for this condition`);
}
