import { expect, test } from "vitest";
import type { Matching } from "@/lib/intake/matching/matching";
import { matchingSchema } from "@/lib/intake/matching/matching-schema";

const matching: Matching = {
  kind: "jobs",
  rowIs: "one part line",
  columns: [
    { source: "Job", target: "job_number" },
    { source: "Part", target: "part-lines.part_number" },
    { source: "Notes", target: undefined },
  ],
  dateOrder: "day first",
  decimalMark: ",",
  labourUnit: "hours",
  words: { status: { comp: "closed", "*": "" } },
  constants: { maker: "Hearth-Wick" },
  dayNumbersFrom: 1904,
};

const messages = (changed: object) => {
  const read = matchingSchema.safeParse({ ...matching, ...changed });
  return read.success ? [] : read.error.issues.map(({ message }) => message);
};

test("a matching survives storage as JSON, unused columns included", () => {
  expect(matchingSchema.parse(JSON.parse(JSON.stringify(matching)))).toEqual(matching);
});

test("an empty target, as a form sends it, means that the column is not used", () => {
  expect(matchingSchema.parse({ ...matching, columns: [{ source: "Job", target: "" }] }).columns).toEqual([
    { source: "Job", target: undefined },
  ]);
});

test("columns that do not exist, and columns that are filled twice, are refused by name", () => {
  expect(messages({ columns: [{ source: "Job", target: "jobnumber" }] })[0]).toMatch(
    /^jobnumber is no column of jobs\. They are: job_number, /,
  );
  expect(
    messages({
      columns: [
        { source: "Job", target: "job_number" },
        { source: "Order", target: "job_number" },
      ],
    }),
  ).toEqual(["Order and Job are both matched to job_number. Choose one of them."]);
  expect(messages({ constants: { colour: "red" } })).toEqual(["colour is no column of jobs."]);
  expect(
    messages({
      kind: "units",
      words: {},
      constants: {},
      columns: [{ source: "Part", target: "part-lines.part_number" }],
    })[0],
  ).toMatch(/is no column of units/);
});

test("notations that are none are refused", () => {
  expect(messages({ dateOrder: "month last" }).length).toBe(1);
  expect(messages({ decimalMark: ";" }).length).toBe(1);
  expect(messages({ dayNumbersFrom: 1902 }).length).toBe(1);
});
