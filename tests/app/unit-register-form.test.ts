// The form of a unit's own days: only what was changed is kept, and what is wrong is told at its field.
import { describe, expect, test } from "vitest";
import { readRegisterForm, registerTexts } from "@/app/units/[id]/facts/read-register-form";
import { day } from "@/lib/calendar/day";
import type { Unit } from "@/lib/domain/unit";

const unit: Unit = {
  maker: "Maker",
  model: "W100",
  productType: "front_load_washer",
  serial: "A1",
  madeFrom: day("2024-02-01"),
  madeUntil: day("2024-02-29"),
  shippedOn: undefined,
  soldOn: day("2024-04-01"),
  deliveredOn: undefined,
  installedOn: undefined,
  occupiedOn: undefined,
  registeredOn: undefined,
  retiredOn: day("2026-01-31"),
  recordedFrom: undefined,
  use: "household",
  territory: "US-OH",
  ownerNumber: 1,
};

function read(typed: Readonly<Record<string, string>>, said = { registerBy: "Robin", registerReason: "Receipt" }) {
  const shown = registerTexts(unit);
  return readRegisterForm({ ...shown, ...said, ...typed, shown: JSON.stringify(shown) }, unit, day("2026-10-31"));
}

test("only what was changed is kept", () => {
  const result = read({ soldOn: "2024-04-03", ownerNumber: "2", registeredOn: " 2024-05-01 " });
  expect(result.ok && result.value.changes).toEqual({
    sold_on: "2024-04-03",
    registered_on: "2024-05-01",
    owner_number: 2,
  });
});

test("a field that was emptied is cleared", () => {
  const result = read({ soldOn: "", territory: "" });
  expect(result.ok && result.value.changes).toEqual({ sold_on: null, territory: null });
});

describe("what is wrong is told at its field", () => {
  test.each([
    [{ soldOn: "03/04/2024" }, "soldOn", "is no day written YYYY-MM-DD"],
    [{ soldOn: "2024-02-30" }, "soldOn", "is no day written YYYY-MM-DD"],
    [{ deliveredOn: "2024-01-31" }, "deliveredOn", "lies before 2024-02-01"],
    [{ installedOn: "2026-02-01" }, "installedOn", "lies after 2026-01-31"],
    [{ registeredOn: "2026-11-01" }, "registeredOn", "is still to come"],
    [{ territory: "Ohio" }, "territory", "is no code by ISO 3166"],
    [{ ownerNumber: "0" }, "ownerNumber", "1 for the first buyer"],
    [{ ownerNumber: "two" }, "ownerNumber", "1 for the first buyer"],
  ])("%j", (typed, field, sentence) => {
    const result = read(typed);
    expect(result.ok ? [] : result.problems).toEqual([{ field, text: expect.stringContaining(sentence) }]);
  });

  test("who, and what shows it", () => {
    const result = read({ soldOn: "2024-04-03" }, { registerBy: " ", registerReason: "" });
    expect(result.ok ? [] : result.problems.map(({ field }) => field)).toEqual(["registerBy", "registerReason"]);
  });

  test("nothing changed", () => {
    const result = read({});
    expect(result.ok ? [] : result.problems).toEqual([{ text: "Nothing was changed: every field is as it was." }]);
  });
});
