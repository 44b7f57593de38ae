import { describe, expect, test } from "vitest";
import { guessDateOrder } from "@/lib/intake/matching/guess-date-order";
import { guessDayNumbers } from "@/lib/intake/matching/guess-day-numbers";
import { guessDecimalMark } from "@/lib/intake/matching/guess-decimal-mark";
import { guessLabourUnit } from "@/lib/intake/matching/guess-labour-unit";
import { matchingSchema } from "@/lib/intake/matching/matching-schema";
import { guess, setting } from "./full-setting";

const header =
  "WO #,Status,Call Date,Date Completed,Mfr,Mdl,Ser #,Appl,Complaint,Work Performed,Labor,Trip Chg,Part No.,Part Desc,Qty,Part Cost,Warranty,Tech,DOP".split(
    ",",
  );
const line = (number: number, part: number) => [
  `${1000 + number}`,
  number % 9 === 0 ? "VOID" : "COMP",
  `3/${1 + (number % 28)}/25`,
  `4/${1 + (number % 28)}/25`,
  "Hearth-Wick",
  `FW55${number % 7}`,
  `HW${200_000 + number}`,
  ["DW", "frig", "dishwasher"][number % 3] ?? "",
  "makes a noise",
  "fitted a new one",
  `${(number % 6) / 4 + 0.25}`,
  "$85.00",
  `P-${100 + part}`,
  "Drain pump",
  "1",
  `$${30 + part}.50`,
  number % 2 === 0 ? "COD" : "IW",
  "JT",
  `1/${1 + (number % 28)}/23`,
];
const rows = Array.from({ length: 60 }, (_, index) => line(index >> 1, index % 5));

describe("the columns of an export", () => {
  const found = guess(header, rows);

  test("are all surely matched where they are plainly named and filled", () => {
    expect(found.columns.map(({ source, target, confidence }) => [source, target, confidence])).toEqual(
      [
        ["WO #", "job_number"],
        ["Status", "status"],
        ["Call Date", "requested_on"],
        ["Date Completed", "completed_on"],
        ["Mfr", "maker"],
        ["Mdl", "model"],
        ["Ser #", "serial"],
        ["Appl", "product_type"],
        ["Complaint", "complaint"],
        ["Work Performed", "correction"],
        ["Labor", "labour_minutes"],
        ["Trip Chg", "trip"],
        ["Part No.", "part-lines.part_number"],
        ["Part Desc", "part-lines.description"],
        ["Qty", "part-lines.quantity"],
        ["Part Cost", "part-lines.unit_cost"],
        ["Warranty", "payer"],
        ["Tech", "technician"],
        ["DOP", "sold_on"],
      ].map(([source, target]) => [source, target, "sure"]),
    );
    expect(found.columns[6]?.reason).toBe('Header "Ser #"; 60 of 60 values look like serials.');
  });

  test("leave nothing open that the file itself answers", () => {
    expect(found.problems).toEqual([]);
    expect(found.dateOrder).toMatchObject({ value: "month first" });
    expect(found.labourUnit).toMatchObject({ value: "hours" });
    expect(found.rowIs).toEqual({
      value: "one part line",
      reason: "Every row is a part line: 30 of 30 job numbers come again, 1000 on 2 rows.",
    });
    expect(found.matching.words).toMatchObject({
      status: { comp: "closed" },
      product_type: { dw: "dishwasher", frig: "refrigerator" },
      payer: { cod: "customer", iw: "maker" },
    });
    expect(matchingSchema.parse(JSON.parse(JSON.stringify(found.matching)))).toEqual(found.matching);
  });

  test("are not filled in where header and values do not agree", () => {
    const wrong = guess(
      ["Serial Number", "Job", "Brand", "Closed"],
      Array.from({ length: 30 }, (_, n) => [`${n}.50`, `J${n}`, "Hearth-Wick", "2025-01-02"]),
    );
    expect(wrong.columns[0]).toMatchObject({ confidence: "not used", target: undefined });
    expect(wrong.matching.columns[0]).toEqual({ source: "Serial Number", target: undefined });
  });

  test("a column that two would fill goes to the better one, and is not sure", () => {
    const two = guess(
      ["Job No", "Brand", "Completed Date", "Closed Date"],
      Array.from({ length: 30 }, (_, n) => [`J${n}`, "Hearth-Wick", "2025-01-02", "2025-01-03"]),
    );
    expect(two.columns[2]).toMatchObject({ target: "completed_on", confidence: "likely" });
    expect(two.columns[3]?.target).not.toBe("completed_on");
  });

  test("ask for a needed column that is not there", () => {
    const lacking = guess(["Job No", "Brand"], [["J1", "Hearth-Wick"]]);
    expect(lacking.problems.map(({ about, target }) => [about, target])).toEqual([["needed column", "completed_on"]]);
  });

  test("with our own names are all sure, whatever the values", () => {
    const own = guess(
      ["job_number", "maker", "completed_on", "component", "part-lines.component"],
      [["J1", "M", "2025-01-02", "drain_pump", ""]],
    );
    expect(own.columns.map(({ target, confidence }) => [target, confidence])).toEqual(
      ["job_number", "maker", "completed_on", "component", "part-lines.component"].map((target) => [target, "sure"]),
    );
  });

  test.each([
    [
      ["Auftragsnummer", "Hersteller", "Modell", "Seriennummer", "Erledigt am", "Beanstandung", "Arbeitszeit"],
      ["job_number", "maker", "model", "serial", "completed_on", "complaint", "labour_minutes"],
    ],
    [
      ["Número de orden", "Marca", "Modelo", "Número de serie", "Fecha de cierre", "Avería"],
      ["job_number", "maker", "model", "serial", "completed_on", "complaint"],
    ],
    [
      ["N° intervention", "Marque", "Modèle", "N° de série", "Date de clôture", "Panne"],
      ["job_number", "maker", "model", "serial", "completed_on", undefined],
    ],
  ])("of another language are known by its basic words: %j", (theirs, ours) => {
    const found = guess(
      theirs,
      Array.from({ length: 12 }, (_, n) =>
        [`A${n}`, "Hearth-Wick", `FW${n}`, `HW20${n}`, `${13 + n}.01.2025`, "zu laut", "1:30"].slice(0, theirs.length),
      ),
    );
    expect(found.columns.map(({ target, confidence }) => (confidence === "guess" ? undefined : target))).toEqual(ours);
  });
});

describe("other kinds of file", () => {
  test.each([
    [
      "units",
      ["Brand", "Model No", "Serial No", "Appliance Type", "Install Date"],
      ["Hearth-Wick", "FW5500", "HW00123", "dishwasher", "2024-05-06"],
    ],
    ["part-lines", ["job_number", "line", "part_number", "quantity", "unit_cost"], ["J1", "1", "P-100", "1", "41.50"]],
  ])("%s are told by their columns", (kind, theirs, row) => {
    expect(guess(theirs, [row, row]).kind.value).toBe(kind);
  });
});

test("days that may lie ahead, such as the end of a contract, are no evidence for the order of day and month", () => {
  const theirs = ["Contract No", "Brand", "Serial No", "Start Date", "End Date"];
  const ending = guess(theirs, [["C-1", "Hearth-Wick", "HW00123", "4/4/2024", "1/8/2025"]]);
  expect(ending.kind.value).toBe("contracts");
  expect(ending.dateOrder).toHaveProperty("question");
});

describe("what a header's earlier matching says", () => {
  const before = guess(header, rows).matching;

  test("is kept for all columns of the same header, also against a better guess", () => {
    const odd = {
      ...before,
      columns: before.columns.map((column) => (column.source === "Tech" ? { ...column, target: undefined } : column)),
    };
    const again = guess(
      header.map((name) => name.toUpperCase()),
      rows,
      { remembered: odd },
    );
    expect(again.matching.columns.map(({ target }) => target)).toEqual(odd.columns.map(({ target }) => target));
    expect(again.columns.every(({ reason }) => reason.startsWith("Matched so for an earlier file"))).toBe(true);
  });

  test("opens only the changed columns of a changed header", () => {
    const changed = header.map((name) => (name === "Mdl" ? "Model Number" : name));
    const again = guess(changed, rows, { remembered: before });
    const open = again.columns.filter(({ reason }) => !reason.startsWith("Matched so for an earlier file"));
    expect(open).toMatchObject([{ source: "Model Number", target: "model", confidence: "sure" }]);
  });

  test("also holds for words", () => {
    const again = guess(header, rows, {
      remembered: { ...before, words: { ...before.words, product_type: { dw: "front_load_washer" } } },
    });
    expect(again.words.find(({ word }) => word === "DW")).toMatchObject({
      suggestion: "front_load_washer",
      confidence: "sure",
    });
  });
});

describe("what the whole column decides", () => {
  const order = (...cells: string[]) => guessDateOrder(cells, setting.today);

  test("is the order of day and month", () => {
    expect(order("3/14/2025", "3/4/2025")).toEqual({
      value: "month first",
      reason: "Month first: 1 of 2 dates have a second part over 12, none a first part.",
    });
    expect(order("14.3.2025", "3.4.2025")).toMatchObject({ value: "day first" });
    expect(order("2025-03-14", "2025-03-04")).toMatchObject({ value: "year first" });
    expect(order("3/3/2025", "4/4/2025")).toMatchObject({
      reason: "Day and month are equal in all of 2 dates, so the order changes nothing.",
    });
    expect(order("1/8/2025", "3/4/2025")).toMatchObject({
      value: "month first",
      reason: expect.stringContaining("would lie after today"),
    });
  });

  test("is asked where it does not: neither order shows, or both do", () => {
    expect(order("3/4/2025", "5/6/2024")).toMatchObject({
      question: "Does the day or the month come first in this file?",
    });
    expect(order("14/3/2025", "3/14/2025")).toMatchObject({
      reason: "1 of 2 dates have a first part over 12 and 1 a second part: both orders occur.",
    });
  });

  test("is the decimal mark", () => {
    expect(guessDecimalMark(["12.5", "1,000"])).toMatchObject({ value: "." });
    expect(guessDecimalMark(["1.234,56", "7"])).toMatchObject({ value: "," });
    expect(guessDecimalMark(["1,234,567"])).toMatchObject({ value: "." });
    expect(guessDecimalMark(["1,234"])).toHaveProperty("question");
    expect(guessDecimalMark(["1,5", "1.5"])).toHaveProperty("question");
    expect(guessDecimalMark(["15", "7"])).toEqual({ value: ".", reason: "None of 2 numbers has a fraction." });
  });

  test("is the first day of day numbers", () => {
    expect(guessDayNumbers(["45717", "45700"], setting.today)).toMatchObject({ value: 1900 });
    expect(guessDayNumbers(["43000"], setting.today)).toHaveProperty("question");
    expect(guessDayNumbers(["2025-03-01"], setting.today)).toBeUndefined();
  });

  test("is the unit of labour", () => {
    const unit = (name: string, ...values: string[]) => guessLabourUnit(name, values, ".");
    expect(unit("Labor", "1.5", "0.75", "2", "1", "3.25")).toMatchObject({ value: "hours" });
    expect(unit("Labor", "89.95", "112.40", "64.10", "75", "129.99")).toMatchObject({ value: "money" });
    expect(unit("Labor", "$89", "$75", "$64")).toMatchObject({ value: "money" });
    expect(unit("Labor", "47", "92", "33", "118", "61")).toMatchObject({ value: "minutes" });
    expect(unit("Labor Hrs", "47")).toMatchObject({ value: "hours" });
    expect(unit("Labor", "85", "120", "90", "75", "60")).toHaveProperty("question");
    expect(unit("Labor", "1", "2")).toHaveProperty("question");
  });
});
