import { describe, expect, test } from "vitest";
import { parseContractRow } from "@/lib/intake/parse-contract-row";
import { parseJobRow } from "@/lib/intake/parse-job-row";
import { parsePartRow } from "@/lib/intake/parse-part-row";
import type { Parsed } from "@/lib/intake/parsed";
import { setting } from "./setting";

type Cells = Record<string, string>;

function wrong(parsed: Parsed<unknown>): string[] {
  return parsed.ok ? [] : parsed.problems.map(({ column, problem }) => `${column} ${problem}`);
}

describe("a part with its price", () => {
  const part = { part_number: "P-100", list_price: "61.50", cost: "41.5", superseded_by: "P-101" };
  const parts = (cells: Cells) => parsePartRow({ ...part, ...cells }, setting);

  test("is read with its amounts in the company's currency", () => {
    expect(parts({})).toMatchObject({
      ok: true,
      value: {
        partNumber: "P-100",
        listPrice: { cents: 6150, currency: "USD" },
        cost: { cents: 4150, currency: "USD" },
        supersededBy: "P-101",
        maker: undefined,
      },
    });
    expect(parts({ currency: "EUR" })).toMatchObject({ value: { cost: { cents: 4150, currency: "EUR" } } });
  });

  test.each<[Cells, string]>([
    [{ part_number: "" }, "part_number is blank"],
    [{ part_number: "8.12E+11" }, "part_number lost its digits in a spreadsheet"],
    [{ superseded_by: "p100" }, "superseded_by names the part itself"],
    [{ replaces: "P 101" }, "superseded_by is also the part that this one replaces"],
    [{ cost: "-1" }, "cost is negative"],
    [{ component: "drain_pumpp" }, "component is not a component of the catalogue"],
  ])("with %j is refused", (cells, problem) => {
    expect(wrong(parts(cells))).toEqual([problem]);
  });
});

describe("a service contract", () => {
  const contract = {
    contract_number: "C-1",
    maker: "Hearth-Wick",
    serial: "HW0012",
    starts_on: "2024-03-10",
    ends_on: "2026-03-09",
  };
  const contracts = (cells: Cells) => parseContractRow({ ...contract, ...cells }, setting);

  test("pays from its first day where nothing says that it waits", () => {
    expect(contracts({})).toMatchObject({ ok: true, value: { waitDays: 0, limit: undefined, plan: undefined } });
    expect(contracts({ wait_days: "30", limit: "500", deductible: "75" })).toMatchObject({
      value: { waitDays: 30, limit: { cents: 50_000 }, deductible: { cents: 7_500 } },
    });
  });

  test("may end on the day on which it starts, and not before", () => {
    expect(wrong(contracts({ ends_on: "2024-03-10" }))).toEqual([]);
    expect(wrong(contracts({ ends_on: "2024-03-09" }))).toEqual(["ends_on is before starts_on, which is 2024-03-10"]);
  });

  test.each<[Cells, string]>([
    [{ contract_number: "" }, "contract_number is blank"],
    [{ serial: "" }, "serial is blank"],
    [{ sold_on: "2025-07-01" }, "sold_on is later than today, 2025-06-30"],
    [{ wait_days: "-1" }, "wait_days is negative"],
    [{ limit: "1,000" }, "limit is not an amount"],
  ])("with %j is refused", (cells, problem) => {
    expect(wrong(contracts(cells))).toEqual([problem]);
  });
});

describe("a job's row that says more of its unit", () => {
  const job = { job_number: "J1", maker: "Hearth-Wick", completed_on: "2024-03-09" };
  const jobs = (cells: Cells) => parseJobRow({ ...job, ...cells }, setting);

  test("needs neither model nor cause", () => {
    expect(jobs({})).toMatchObject({
      ok: true,
      value: { model: undefined, job: { cause: "not_determined" }, unitFacts: { madeFrom: undefined } },
    });
  });

  test.each([
    ["2019", "2019-01-01", "2019-12-31"],
    ["2020-02", "2020-02-01", "2020-02-29"],
    ["2020-02-05", "2020-02-05", "2020-02-05"],
  ])("made %s may have been made from %s to %s", (made, madeFrom, madeUntil) => {
    expect(jobs({ made })).toMatchObject({ value: { unitFacts: { madeFrom, madeUntil } } });
  });

  test("made in the year of the job is no contradiction, made in the year after is", () => {
    expect(wrong(jobs({ made: "2024" }))).toEqual([]);
    expect(wrong(jobs({ made: "2025" }))).toEqual(["completed_on is before made, which is 2025"]);
  });
});
