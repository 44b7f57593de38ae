import { describe, expect, test } from "vitest";
import { parseComponentRow } from "@/lib/intake/parse-component-row";
import { parseJobRow } from "@/lib/intake/parse-job-row";
import { parsePartLineRow } from "@/lib/intake/parse-part-line-row";
import { parsePhotoRow } from "@/lib/intake/parse-photo-row";
import { parseRangeRow } from "@/lib/intake/parse-range-row";
import { parseReadingRow } from "@/lib/intake/parse-reading-row";
import { parseUnitRow } from "@/lib/intake/parse-unit-row";
import type { Parsed } from "@/lib/intake/parsed";
import { setting } from "./setting";

type Cells = Record<string, string>;

const unit: Cells = { maker: "Hearth-Wick", model: "FW5500", product_type: "front_load_washer", serial: "HW 0012-A" };
const job: Cells = {
  job_number: "J1",
  maker: "Hearth-Wick",
  model: "FW5500",
  completed_on: "2024-03-09",
  cause: "component",
};
const part: Cells = { job_number: "J1", line: "1", part_number: "P-100", quantity: "2", unit_cost: "41.5" };
const reading: Cells = {
  job_number: "J1",
  number: "1",
  check: "pump_winding",
  mode: "ohm",
  outcome: "number",
  value: "14.2",
  unit: "ohm",
  power: "off",
};
const photo: Cells = { job_number: "J1", subject: "plate", file: "photos/1.jpg" };
const component: Cells = { component: "cage", name: "Bearing cage", product_types: "dishwasher" };
const range: Cells = {
  maker: "Hearth-Wick",
  model: "FW5500",
  check: "pump_winding",
  low: "12",
  unit: "ohm",
  source: "Sheet",
  mark: "published",
};

/** Column and problem of everything that is wrong; the fix must always say something. */
function wrong(parsed: Parsed<unknown>): string[] {
  if (parsed.ok) return [];
  expect(parsed.problems.every(({ fix }) => fix.length > 5)).toBe(true);
  return parsed.problems.map(({ column, problem }) => `${column} ${problem}`);
}

const units = (cells: Cells) => wrong(parseUnitRow({ ...unit, ...cells }, setting));
const jobs = (cells: Cells) => wrong(parseJobRow({ ...job, ...cells }, setting));
const parts = (cells: Cells) => wrong(parsePartLineRow({ ...part, ...cells }, setting));
const readings = (cells: Cells) => wrong(parseReadingRow({ ...reading, ...cells }, setting));
const photos = (cells: Cells) => wrong(parsePhotoRow({ ...photo, ...cells }, setting));
const components = (cells: Cells) => wrong(parseComponentRow({ ...component, ...cells }, setting));
const ranges = (cells: Cells) => wrong(parseRangeRow({ ...range, ...cells }, setting));

test("a row of each kind that names only what it must is taken", () => {
  expect([units({}), jobs({}), parts({}), readings({}), photos({}), components({}), ranges({})].flat()).toEqual([]);
});

describe("a unit", () => {
  test("is taken with a month of manufacture as the first and last day of that month", () => {
    const read = parseUnitRow({ ...unit, made: "2024-02" }, setting);
    expect(read).toMatchObject({
      ok: true,
      value: { madeFrom: "2024-02-01", madeUntil: "2024-02-29", use: "household", ownerNumber: 1 },
    });
  });

  test("keeps blank cells unknown", () => {
    expect(parseUnitRow({ ...unit, sold_on: " ", territory: "" }, setting)).toMatchObject({
      ok: true,
      value: { soldOn: undefined, territory: undefined },
    });
  });

  test.each([
    [{ maker: " " }, "maker is blank"],
    [{ serial: "8.12E+11" }, "serial lost its digits in a spreadsheet"],
    [{ serial: "---" }, "serial has neither a letter nor a digit"],
    [{ product_type: "washer" }, "product_type is not one of the words for this column"],
    [{ made: "2024-13" }, "made is no day of the calendar"],
    [{ sold_on: "2023-02-29" }, "sold_on is no day of the calendar"],
    [{ sold_on: "29/02/2024" }, "sold_on is not a day written year first"],
    [{ sold_on: "0024-02-29" }, "sold_on lies outside the years 1900 to 2199"],
    [{ sold_on: "2025-07-01" }, "sold_on is later than today, 2025-06-30"],
    [{ made: "2024-03-10", sold_on: "2024-03-09" }, "sold_on is before made, which is 2024-03-10"],
    [
      { installed_on: "2024-03-10", retired_on: "2024-03-09" },
      "retired_on is before installed_on, which is 2024-03-10",
    ],
    [{ use: "rental" }, "use is not one of the words for this column"],
    [{ territory: "California" }, "territory is not a country or state code"],
    [{ owner_number: "0" }, "owner_number is below 1"],
    [{ owner_number: "-1" }, "owner_number is negative"],
    [{ maker: "Hearth\nWick" }, "maker contains a line end, a tab or another control character"],
  ])("with %j is refused", (cells, problem) => {
    expect(units(cells)).toEqual([problem]);
  });

  test("made in the month of its sale, of which only the month is known, is no contradiction", () => {
    expect(units({ made: "2024-03", sold_on: "2024-03-02" })).toEqual([]);
    expect(units({ sold_on: "2025-06-30" })).toEqual([]);
  });

  test("with several wrong cells has all of them named", () => {
    expect(units({ maker: "", sold_on: "soon", owner_number: "x" })).toHaveLength(3);
  });
});

describe("a job", () => {
  test("reads amounts as whole cents of the company's currency", () => {
    const read = parseJobRow({ ...job, labour: "129.5", trip: "0", labour_minutes: "45" }, setting);
    expect(read).toMatchObject({
      ok: true,
      value: { job: { labour: { cents: 12950, currency: "USD" }, trip: { cents: 0 }, labourMinutes: 45 } },
    });
  });

  test("keeps what the technician wrote, line ends and spaces included", () => {
    const correction = ' Replaced pump.\n"Hums" gone. ';
    expect(parseJobRow({ ...job, correction }, setting)).toMatchObject({ ok: true, value: { job: { correction } } });
  });

  test.each([
    [{ component: "drain_pmp" }, "component is not a component of the catalogue"],
    [{ component: "Drain pump" }, "component is not a key"],
    [{ symptom: "sings" }, "symptom is not a symptom of the catalogue"],
    [{ failure_mode: "tired" }, "failure_mode is not a failure mode of the catalogue"],
    [{ cause: "gremlins" }, "cause is not one of the words for this column"],
    [{ cause: "bad luck" }, "cause is not one of the words for this column"],
    [{ completed_on: "2023-02-29" }, "completed_on is no day of the calendar"],
    [{ completed_on: "2026-13-01" }, "completed_on is no day of the calendar"],
    [{ requested_on: "2024-03-10" }, "completed_on is before requested_on, which is 2024-03-10"],
    [{ labour: "-5.00" }, "labour is negative"],
    [{ labour: "5.001" }, "labour is not an amount"],
    [{ labour: "1,200.00" }, "labour is not an amount"],
    [{ labour: "$5" }, "labour is not an amount"],
    [{ currency: "XYZ" }, "currency is not one of the words for this column"],
    [{ callback_of: "J1" }, "callback_of names this job itself"],
    [{ complaint: "x".repeat(1 << 20) }, "complaint has 1048576 characters; the limit is 20000"],
    [{ complaint: "a\0b" }, "complaint contains a NUL character"],
  ])("with %j is refused", (cells, problem) => {
    expect(jobs(cells)).toEqual([problem]);
  });

  test("shows a cell of a megabyte shortened, and a misspelt key with the one that is meant", () => {
    const long = parseJobRow({ ...job, complaint: "x".repeat(1 << 20) }, setting);
    expect(long).toMatchObject({ ok: false, problems: [{ value: `${"x".repeat(120)}… (1048576 characters)` }] });
    const misspelt = parseJobRow({ ...job, component: "drain_pmp" }, setting);
    expect(misspelt).toMatchObject({
      ok: false,
      problems: [{ fix: expect.stringContaining("Did you mean drain_pump?") }],
    });
  });
});

describe("a part line", () => {
  test.each([
    [{ quantity: "-1" }, "quantity is negative"],
    [{ quantity: "0" }, "quantity is below 1"],
    [{ quantity: "1.5" }, "quantity is not a whole number"],
    [{ quantity: "2000000" }, "quantity is too large"],
    [{ unit_cost: "-1" }, "unit_cost is negative"],
    [{ component: "flux" }, "component is not a component of the catalogue"],
    [{ role: "gift" }, "role is not one of the words for this column"],
  ])("with %j is refused", (cells, problem) => {
    expect(parts(cells)).toEqual([problem]);
  });
});

describe("a reading", () => {
  test.each([
    [{ check: "aura" }, "check is not a check of the catalogue"],
    [{ value: "" }, "value is blank although the outcome is a number"],
    [{ unit: "" }, "unit is blank although the outcome is a number"],
    [{ value: "14 ohm" }, "value is not a number"],
    [{ outcome: "open" }, "value is filled in although the outcome is open"],
    [{ mode: "volt_ac" }, "mode does not belong to the check pump_winding"],
    [{ outcome: "finding", value: "", unit: "", word: "kinked" }, "word is not a finding of the check pump_winding"],
    [{ outcome: "code", value: "", unit: "" }, "word is blank although the outcome is a code"],
    [{ sheet_low: "20", sheet_high: "10" }, "sheet_high is below sheet_low, which is 20"],
    [{ isolated: "maybe" }, "isolated is neither yes nor no"],
    [{ taken_at: "2024-03-09T14:05:00" }, "taken_at is not a moment in time"],
    [{ taken_at: "2024-02-30T14:05:00Z" }, "taken_at is not a moment in time"],
  ])("with %j is refused", (cells, problem) => {
    expect(readings(cells)).toEqual([problem]);
  });

  test("can be a finding of its check, or a fault code", () => {
    const finding = {
      check: "drain_hose",
      mode: "observation",
      outcome: "finding",
      value: "",
      unit: "",
      word: "kinked",
    };
    expect(parseReadingRow({ ...reading, ...finding }, setting)).toMatchObject({
      ok: true,
      value: { reading: { outcome: { kind: "finding", word: "kinked" } } },
    });
  });
});

describe("a photo", () => {
  test.each(["../1.jpg", "a/../../1.jpg", "/etc/passwd", "C:\\1.jpg", "a//b.jpg", "..\\1.jpg"])(
    "in %s is refused",
    (file) => {
      expect(photos({ file })).toEqual(["file does not name a file below the folder of this CSV"]);
    },
  );
});

describe("a component or a range", () => {
  test("is refused where it contradicts itself", () => {
    expect(components({ product_types: "dishwasher toaster" })).toEqual(["product_types is not a kind of appliance"]);
    expect(components({ part_of: "cage" })).toEqual(["part_of names the component itself"]);
    expect(ranges({ low: "" })).toEqual(["low is blank, and so is high"]);
    expect(ranges({ high: "3" })).toEqual(["high is below low, which is 12"]);
  });
});
