import { expect, test } from "vitest";
import { parseShop } from "@/lib/intake/parse-shop";
import { readDocument } from "@/lib/intake/read-document";

const shop = {
  schema: "ohmsworth/shop/1",
  name: "Test",
  currency: "USD",
  timeZone: "America/Los_Angeles",
  territory: "US-CA",
  recordsFrom: null,
  madeGraceMonths: 3,
  demo: true,
};

test("a whole document is read", () => {
  expect(parseShop(shop)).toMatchObject({ ok: true, value: { name: "Test", recordsFrom: undefined, repeatDays: 30 } });
  expect(parseShop({ ...shop, repeatDays: 0 })).toMatchObject({ ok: true, value: { repeatDays: 0 } });
  expect(parseShop({ ...shop, recordsFrom: "2021-01-01" })).toMatchObject({
    ok: true,
    value: { recordsFrom: "2021-01-01" },
  });
});

test.each([
  [{ timeZone: "Mars/Olympus" }, "timeZone"],
  [{ recordsFrom: "2021-02-29" }, "recordsFrom"],
  [{ madeGraceMonths: -1 }, "madeGraceMonths"],
  [{ madeGraceMonths: 1.5 }, "madeGraceMonths"],
  [{ repeatDays: -1 }, "repeatDays"],
  [{ repeatDays: 367 }, "repeatDays"],
  [{ currency: "XYZ" }, "currency"],
  [{ name: "" }, "name"],
  [{ demo: "yes" }, "demo"],
  [{ territory: "California" }, "territory"],
])("%j is refused by its name", (change, column) => {
  expect(parseShop({ ...shop, ...change })).toMatchObject({ ok: false, problems: [{ column }] });
});

const bytes = (document: unknown) => Buffer.from(typeof document === "string" ? document : JSON.stringify(document));

test("a document says itself what it is", () => {
  expect(readDocument(bytes(shop), undefined)).toMatchObject({ ok: true, kind: "shop", parts: [shop] });
  expect(readDocument(bytes({ schema: "ohmsworth/policies/1", policies: [1, 2] }), undefined)).toMatchObject({
    ok: true,
    kind: "policies",
    parts: [1, 2],
  });
});

test.each([
  ["{ broken", undefined, "not JSON"],
  [{ schema: "other" }, undefined, "none of ours"],
  [shop, "policies" as const, "of the kind shop"],
  [{ schema: "ohmsworth/policies/1" }, undefined, 'no list "policies"'],
])("%j is refused", (document, stated, problem) => {
  expect(readDocument(bytes(document), stated)).toMatchObject({
    ok: false,
    problems: [{ problem: expect.stringContaining(problem) }],
  });
});
