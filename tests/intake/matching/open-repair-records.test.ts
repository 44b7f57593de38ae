import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { guessMatching } from "@/lib/intake/matching/guess-matching";
import { anyOtherWord, type Matching } from "@/lib/intake/matching/matching";
import { translator } from "@/lib/intake/matching/translate-row";
import { parseJobRow } from "@/lib/intake/parse-job-row";
import { setting as fullSetting, sourceRows } from "./full-setting";

// From outside: 618 real repair records of two collecting organisations in five countries, with columns nobody here chose.
// Source and licence in tests/reference/SOURCES.md. What each column means was read off the publisher's own descriptions.

/** The records run on to 2025. */
const setting = { ...fullSetting, today: day("2026-01-01") };
const path = new URL("../../reference/data/openrepair_appliances_with_age.csv", import.meta.url);
const [header = [], ...rows]: string[][] = parse(readFileSync(path, "utf8"));
const look = { header, rows: sourceRows(rows) };
const guess = guessMatching(look, { catalogue: setting.catalogue, today: setting.today });

describe("a file of repair records nobody made for us", () => {
  test("is recognised as jobs, and its columns are matched", () => {
    expect(guess.kind.value).toBe("jobs");
    const targets = Object.fromEntries(guess.columns.map(({ source, target }) => [source, target]));
    expect(targets).toEqual({
      id: "job_number",
      data_provider: undefined,
      country: undefined,
      product_category: "product_type",
      brand: "maker",
      year_of_manufacture: "made",
      product_age: undefined,
      repair_status: "status",
      repair_barrier_if_end_of_life: undefined,
      event_date: "completed_on",
    });
    expect(guess.columns.find(({ source }) => source === "id")).toMatchObject({
      confidence: "sure",
      reason: 'Header "id"; 200 of 200 values look like job numbers.',
    });
  });

  test("leaves open only what its words mean", () => {
    expect(guess.problems.map(({ about, target }) => [about, target])).toEqual([
      ["words", "product_type"],
      ["words", "status"],
    ]);
    expect(
      guess.words
        .filter(({ target }) => target === "status")
        .map(({ word, count, suggestion }) => [word, count, suggestion]),
    ).toEqual([
      ["Fixed", 266, "closed"],
      ["Repairable", 216, undefined],
      ["End of life", 75, undefined],
      ["Unknown", 61, undefined],
    ]);
  });

  test("is taken in whole once the words are answered, three years that are none as unknown", () => {
    const matching: Matching = {
      ...guess.matching,
      words: {
        ...guess.matching.words,
        product_type: { [anyOtherWord]: "other_equipment" },
        status: { [anyOtherWord]: "closed" },
      },
    };
    const translate = translator(matching, header, setting);
    const read = look.rows.map((row) => ({ row, translation: translate(row) }));
    expect(read.filter(({ translation }) => translation.kind !== "rows")).toEqual([]);
    const blanked = read.flatMap(({ translation }) =>
      translation.kind === "rows"
        ? translation.notes.filter(({ column, taken }) => column === "made" && taken === "")
        : [],
    );
    expect(blanked.map(({ raw }) => raw)).toEqual(["1901", "1901", "1901"]);
    const jobs = read.flatMap(({ translation }) =>
      translation.kind === "rows" ? translation.rows.map(({ cells }) => parseJobRow(cells, setting)) : [],
    );
    expect(jobs.length).toBe(618);
    expect(jobs.filter(({ ok }) => !ok)).toEqual([]);
    expect(jobs[0]).toMatchObject({
      value: {
        job: { completedOn: "2020-01-01", cause: "not_determined", status: "closed" },
        unitFacts: { madeFrom: "2009-01-01", madeUntil: "2009-12-31" },
        productType: "other_equipment",
        model: undefined,
        serial: undefined,
      },
    });
  });
});
