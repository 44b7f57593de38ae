import { expect, test } from "vitest";
import type { Policy } from "@/lib/domain/policy";
import { parsePolicy } from "@/lib/intake/parse-policy";
import { isList } from "@/lib/intake/policy-form/form-field";
import {
  documentOfForm,
  fieldOfPointer,
  type LooseDocument,
  rowCount,
  textsOfDocument,
} from "@/lib/intake/policy-form/policy-form";
import { policySections } from "@/lib/intake/policy-form/policy-sections";
import { policyJsonSchema } from "@/lib/intake/policy-json-schema";
import { demoPolicies } from "../../synthetic-data/plan-policies";
import { places, valuesByPlace } from "./policy-places";

/** Everything that a form would send for a document, with one blank row under each list. */
function sent(document: LooseDocument): ReadonlyMap<string, readonly string[]> {
  const shown = textsOfDocument(document);
  const form = new Map<string, readonly string[]>();
  for (const part of policySections.flatMap(({ parts }) => parts)) {
    if (!isList(part)) form.set(part.at, shown(part.at));
    else
      for (let row = 0; row <= rowCount(document, part.list); row++)
        for (const field of part.fields)
          form.set(`${part.list}.${row}.${field.at}`, shown(`${part.list}.${row}.${field.at}`));
  }
  return form;
}

function read(form: ReadonlyMap<string, readonly string[]>): LooseDocument {
  return documentOfForm((name) => form.get(name) ?? [], [...form.keys()]);
}

const policies: readonly Policy[] = demoPolicies();

test.each(policies.map((policy) => [`${policy.key}, version ${policy.version}`, policy] as const))(
  "%s comes back from the form as the same policy",
  (_name, policy) => {
    const parsed = parsePolicy({ ...read(sent(JSON.parse(JSON.stringify(policy)))), version: policy.version });
    expect(parsed).toEqual({ ok: true, policy: JSON.parse(JSON.stringify(policy)) });
  },
);

test("what cannot be read is kept as it was typed, refused, and told at its field", () => {
  const form = new Map(sent(JSON.parse(JSON.stringify(policies[0]))));
  form
    .set("terms.0.term", ["two years or so"])
    .set("pay.claimCapCents", ["a lot"])
    .set("effectiveFrom", ["2024-02-30"]);
  const document = read(form);
  const shown = textsOfDocument(document);
  expect(shown("terms.0.term")).toEqual(["two years or so"]);
  const parsed = parsePolicy({ ...document, version: 1 });
  const fields = parsed.ok ? [] : parsed.problems.map(({ pointer }) => fieldOfPointer(pointer));
  expect(fields.sort()).toEqual(["effectiveFrom", "pay.claimCapCents", "terms.0.term"]);
});

test("an empty form is a document with nothing in it, and names what is missing", () => {
  const parsed = parsePolicy({ ...read(new Map()), version: 1 });
  expect(parsed.ok).toBe(false);
  const fields = parsed.ok ? [] : parsed.problems.map(({ pointer }) => fieldOfPointer(pointer) ?? pointer);
  expect(fields).toEqual(expect.arrayContaining(["name", "key", "sourceDocument", "approvedBy", "approvedOn"]));
});

test.each([
  ["2 years", { n: 2, unit: "year" }],
  ["1 day", { n: 1, unit: "day" }],
  ["12 Months", { n: 12, unit: "month" }],
  ["lifetime", { unit: "lifetime" }],
])("%s keeps its unit", (text, term) => {
  const form = new Map([["terms.0.term", [text]]]);
  expect(read(form).terms).toEqual([expect.objectContaining({ term })]);
});

test("every value that a policy can hold has its field, so that each rule can be edited in the browser", () => {
  const fields = policySections
    .flatMap(({ parts }) => parts)
    .flatMap((part) => (isList(part) ? part.fields.map(({ at }) => `${part.list}.*.${at}`) : [part.at]));
  const all = [...new Set(places(policyJsonSchema(), ""))];
  expect(all.length).toBeGreaterThan(100);
  // A field may stand for a place and all below it, such as a term for its number and unit. The version is counted.
  const without = all.filter((place) => !fields.some((field) => place === field || place.startsWith(`${field}.`)));
  expect(without).toEqual(["version"]);
});

test("the invented company’s policies use every rule that a policy can hold, and every kind of each", () => {
  const used = demoPolicies().flatMap((policy) => valuesByPlace(policy));
  const at = new Set(used.map(([place]) => place));
  expect([...new Set(places(policyJsonSchema(), ""))].filter((place) => !at.has(place))).toEqual([]);
  const kinds = (place: string) => new Set(used.flatMap(([found, value]) => (found === place ? [value] : []))).size;
  const counted = { decisiveEvent: 3, anchorDay: 2, replacementUnit: 2, "transfer.kind": 3, "use.kind": 3 };
  const paid = { "pay.labour.kind": 3, "pay.trip.kind": 4, "pay.diagnosis.kind": 2, "terms.*.covers.kind": 4 };
  const clocks = { "clocks.filing.by": 2, "clocks.filing.roll": 2, "clocks.partHold.from": 2 };
  const others = { "replacementPart.kind": 2, "replacementPart.combine": 2, "contract.type": 2, designation: 2 };
  for (const [place, many] of Object.entries({ ...counted, ...paid, ...clocks, ...others }))
    expect(kinds(place), place).toBe(many);
});
