import { expect, test } from "vitest";
import { columnsOf, neededColumns, tableKinds } from "@/lib/intake/file-kinds";
import { documentedColumns, jsonSchemaOf } from "@/lib/intake/json-schemas";
import { readHeader } from "@/lib/intake/read-header";

test.each(tableKinds)("a header with all columns of %s, or with only those it needs, is recognised", (kind) => {
  expect(readHeader(columnsOf(kind))).toEqual({ ok: true, kind, columns: columnsOf(kind) });
  expect(readHeader(neededColumns(kind).toReversed())).toMatchObject({ ok: true, kind });
});

test("needed columns are those that the file contract marks", () => {
  expect(neededColumns("units")).toEqual(["maker", "model", "product_type", "serial"]);
  expect(neededColumns("jobs")).toEqual(["job_number", "maker", "completed_on"]);
  expect(neededColumns("part-lines")).toEqual(["job_number", "line", "part_number", "unit_cost"]);
  expect(neededColumns("readings")).toEqual(["job_number", "number", "check", "mode", "outcome", "power"]);
});

function problems(cells: readonly string[]): readonly string[] {
  const read = readHeader(cells);
  return read.ok ? [] : read.problems.map(({ problem }) => problem);
}

test("a column that is missing, foreign, nameless or there twice is named", () => {
  expect(problems(["maker", "model", "product_type"])).toEqual(["Column serial is missing."]);
  expect(problems([...neededColumns("units"), "colour"])).toEqual(["Column colour is not one of ours."]);
  expect(problems([...neededColumns("units"), ""])).toEqual(["Column 5 has no name."]);
  expect(problems([...neededColumns("units"), "maker"])).toEqual(["Column maker is there twice."]);
});

test("a header of another separator, or of nothing of ours, says so", () => {
  expect(problems(["maker;model;product_type;serial"])).toEqual(["The columns seem to be separated by semicolons."]);
  expect(problems(["maker\tmodel"])).toEqual(["The columns seem to be separated by tabs."]);
  expect(problems(["street", "colour"])).toEqual(["The header fits none of the kinds of file."]);
});

test.each(tableKinds)("the published schema of %s names every column, with what it means and an example", (kind) => {
  const schema = jsonSchemaOf(kind);
  expect(Object.keys(schema.properties as object)).toEqual(columnsOf(kind)); // a JSON Schema of an object has properties
  expect(schema.required).toEqual(neededColumns(kind));
  for (const column of documentedColumns(kind)) {
    expect(column.description.length).toBeGreaterThan(5);
    expect(column.example).not.toBe("");
  }
});
