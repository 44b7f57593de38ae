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

interface Described {
  readonly properties?: Readonly<Record<string, Described>>;
  readonly items?: Described;
  readonly anyOf?: readonly Described[];
  readonly oneOf?: readonly Described[];
}

/** Every place of a policy that holds a value, with `*` for a row of a list; lists of plain words are one value. */
function places({ properties, items, anyOf = [], oneOf = [] }: Described, at: string): readonly string[] {
  const under = [
    ...Object.entries(properties ?? {}).flatMap(([name, part]) => places(part, at === "" ? name : `${at}.${name}`)),
    ...(items === undefined ? [] : places(items, `${at}.*`).filter((place) => place !== `${at}.*`)),
    ...[...anyOf, ...oneOf].flatMap((one) => places(one, at)).filter((place) => place !== at),
  ];
  return under.length === 0 ? [at] : under;
}

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
