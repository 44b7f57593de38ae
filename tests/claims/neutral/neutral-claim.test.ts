import { Ajv2020 } from "ajv/dist/2020.js";
import addFormats from "ajv-formats";
import { expect, test } from "vitest";
import { assembleClaim } from "@/lib/claims/assemble-claim";
import { claimPacket } from "@/lib/claims/claim-packet";
import { canonicalJson } from "@/lib/claims/neutral/canonical-json";
import { claimJsonSchema } from "@/lib/claims/neutral/claim-json-schema";
import { neutralClaim } from "@/lib/claims/neutral/neutral-claim";
import type { NeutralClaim } from "@/lib/claims/neutral/neutral-claim-document";
import type { JobRecord } from "@/lib/domain/job";
import { claimCase, pumpRecord } from "../claim-case";

function neutralOf(record: JobRecord): NeutralClaim {
  const given = claimCase(record);
  const assembly = assembleClaim(given);
  if (assembly.kind === "blocked") throw new Error(assembly.reasons.map((reason) => reason.sentence).join(" "));
  const { claim } = assembly;
  const packet = claimPacket(given, claim, [], { claimNumber: "C-2025-0001", servicer: "Servicer" });
  return neutralClaim({ given, claim, packet });
}

// A general validator that knows nothing of this program reads the published schema.
const ajv = new Ajv2020({ allErrors: true, strict: true, strictTypes: false });
addFormats.default(ajv);
const isClaim = ajv.compile(claimJsonSchema());

const whole = pumpRecord();

test("another validator takes the claim by the published schema", () => {
  expect(isClaim(JSON.parse(canonicalJson(neutralOf(whole)))), JSON.stringify(isClaim.errors)).toBe(true);
});

test("the schema refuses what is not a claim", () => {
  const claim = neutralOf(whole);
  const wrong: readonly unknown[] = [
    {},
    { ...claim, more: 1 },
    { ...claim, schema: "ohmsworth/claim/2" },
    { ...claim, header: { ...claim.header, preparedOn: "20.03.2025" } },
    { ...claim, money: { ...claim.money, total: { cents: 12.5, currency: "USD" } } },
    { ...claim, money: { ...claim.money, total: { cents: 12, currency: "dollar" } } },
    { ...claim, attachments: claim.attachments.map((file) => ({ ...file, sha256: "abc" })) },
  ];
  expect(wrong.map((value) => isClaim(value))).toEqual(wrong.map(() => false));
});

test("lines less deductions are the total, and every photo is named by its hash", () => {
  const { money, attachments } = neutralOf(whole);
  const sum = (of: readonly { readonly amount: { readonly cents: number } }[]) =>
    of.reduce((cents, { amount }) => cents + amount.cents, 0);
  expect(sum(money.lines) - sum(money.deductions)).toBe(money.total.cents);
  expect(attachments.map(({ sha256 }) => sha256)).toEqual(whole.attachments.map(({ sha256 }) => sha256));
});

test("equal claims give equal text; a changed digit, an instant written with another offset", () => {
  const text = canonicalJson(neutralOf(whole));
  expect(canonicalJson(neutralOf(pumpRecord()))).toBe(text);
  const at = (takenAt: string) =>
    canonicalJson(neutralOf({ ...whole, readings: whole.readings.map((reading) => ({ ...reading, takenAt })) }));
  expect(at("2025-03-05 10:15:00+00")).toBe(at("2025-03-05T05:15:00-05:00"));
  expect(at("2025-03-05T10:16:00Z")).not.toBe(at("2025-03-05T10:15:00Z"));
});

test("nothing in it names a person", () => {
  const named = { ...whole, job: { ...whole.job, technician: "Zebulon Quirk" } };
  const signed = { ...named, readings: named.readings.map((reading) => ({ ...reading, technician: "Zebulon Quirk" })) };
  expect(canonicalJson(neutralOf(signed))).not.toContain("Zebulon");
});
