import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { components } from "@/lib/domain/components";
import { failureModes } from "@/lib/domain/failure-modes";
import { normalised } from "@/lib/domain/normalised";
import { productTypeKeys } from "@/lib/domain/product-type";
import { symptoms } from "@/lib/domain/symptoms";
import { checks } from "@/lib/evidence/checks";
import type { IntakeSetting } from "@/lib/intake/intake-setting";
import { parseContractRow } from "@/lib/intake/parse-contract-row";
import { parseJobRow } from "@/lib/intake/parse-job-row";
import { parsePartLineRow } from "@/lib/intake/parse-part-line-row";
import { parsePhotoRow } from "@/lib/intake/parse-photo-row";
import { parsePolicies } from "@/lib/intake/parse-policies";
import { parseRangeRow } from "@/lib/intake/parse-range-row";
import { parseReadingRow } from "@/lib/intake/parse-reading-row";
import { parseUnitRow } from "@/lib/intake/parse-unit-row";
import { type DemoReading, type Row, writeAndRead } from "./demo-reading";

// Every row goes through the reader that users' rows go through. What needs the rows of other files (a job that is not
// on file, a serial of another model) is looked up here by code of its own.

const setting: IntakeSetting = {
  catalogue: {
    productTypes: new Set(productTypeKeys),
    components: new Set(components.map(({ key }) => key)),
    symptoms: new Set(symptoms.map(({ key }) => key)),
    failureModes: new Set(failureModes.map(({ key }) => key)),
    checks: new Map(checks.map((check) => [check.key, { modes: check.modes, findings: Object.keys(check.findings) }])),
  },
  currency: "USD",
  today: day("2026-10-31"),
};

let demo: DemoReading;
beforeAll(async () => {
  demo = await writeAndRead({ seed: 3, size: 0.5 });
}, 60_000);

type Parse = (cells: Row, setting: IntakeSetting) => { readonly ok: boolean };

/** Rows that cannot be taken in, by number: unreadable by themselves, or at odds with other rows. */
function refused(rows: readonly Row[], parse: Parse, atOdds: (row: Row) => boolean): number[] {
  return rows.flatMap((row, index) => (!parse(row, setting).ok || atOdds(row) ? [index + 2] : []));
}

const planted = (file: string) => demo.truth.heldRows.filter((row) => row.file === file).map(({ row }) => row);

describe("exactly the planted rows cannot be taken in", () => {
  test("units", () => {
    expect(planted("units.csv").length).toBeGreaterThan(5);
    expect(refused(demo.units, parseUnitRow, () => false)).toEqual(planted("units.csv"));
  });

  test("jobs", () => {
    const modelOfSerial = new Map(demo.units.map((unit) => [unit.serial, normalised(unit.model ?? "")]));
    const ofAnotherModel = ({ serial, model }: Row) =>
      modelOfSerial.get(serial)?.startsWith(normalised(model ?? "")) === false;
    expect(planted("jobs.csv").length).toBeGreaterThan(5);
    expect(refused(demo.jobs, parseJobRow, ofAnotherModel)).toEqual(planted("jobs.csv"));
  });

  test("part lines and readings", () => {
    const held = new Set(planted("jobs.csv"));
    const numbers = new Set(demo.jobs.filter((_, index) => !held.has(index + 2)).map(({ job_number }) => job_number));
    const unknownJob = ({ job_number }: Row) => !numbers.has(job_number);
    expect(refused(demo.partLines, parsePartLineRow, unknownJob)).toEqual(planted("part-lines.csv"));
    expect(refused(demo.readings, parseReadingRow, unknownJob)).toEqual(planted("readings.csv"));
  });

  test("none of contracts, ranges and photos", () => {
    const serials = new Set(demo.units.map(({ serial }) => serial));
    expect(demo.contracts.length).toBeGreaterThan(1000);
    expect(refused(demo.contracts, parseContractRow, ({ serial }) => !serials.has(serial))).toEqual([]);
    expect(demo.ranges.length).toBeGreaterThan(40);
    expect(refused(demo.ranges, parseRangeRow, () => false)).toEqual([]);
    expect(demo.photos.length).toBeGreaterThan(60);
    expect(refused(demo.photos, parsePhotoRow, () => false)).toEqual([]);
  });
});

test("components and symptoms belong to the kind of appliance that they are told of", () => {
  const typesOf = new Map<string, readonly string[]>(
    [...components, ...symptoms].map(({ key, productTypes }) => [key, productTypes]),
  );
  const held = new Set(planted("jobs.csv"));
  for (const [index, { component, symptom, product_type }] of demo.jobs.entries()) {
    if (held.has(index + 2)) continue;
    for (const word of [component, symptom]) if (word) expect(typesOf.get(word)).toContain(product_type);
  }
});

test("the policies are read without a problem, two versions where the maker shortened its terms", () => {
  const read = parsePolicies(JSON.parse(readFileSync(join(demo.folder, "policies.json"), "utf8")));
  expect(read.ok ? read.policies.map(({ key, version }) => `${key} ${version}`) : read.problems).toEqual([
    "brackenhall_household 1",
    "brackenhall_household 2",
    "veltrane_household 1",
    "veltrane_household 2",
    "dunmorrow_household 1",
    "dunmorrow_household 2",
    "larkfield_extended 1",
    "larkfield_home 1",
    "larkfield_trial 1",
  ]);
});
