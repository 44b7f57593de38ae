import { expect, test } from "vitest";
import { cellsOf, fileOf, itemsOf, lookAt, refusalOf } from "./table-files";

test("one object a line: the keys of all lines are the header, each value in its column", async () => {
  const path = fileOf(
    '{"job": "1", "model": "AB"}\n\n{"closed": "2024-01-01", "job": "2"}\r\n{ }\n{"done": true, "model": null}',
  );
  const look = await lookAt(path);
  expect(look.form).toEqual({ kind: "lines", encoding: "utf-8" });
  expect(look.header).toEqual(["job", "model", "closed", "done"]);
  expect(look.rows).toBe(4);
  expect(await cellsOf(path)).toEqual([
    ["1", "AB", "", ""],
    ["2", "", "2024-01-01", ""],
    ["", "", "", ""],
    ["", "", "", "true"],
  ]);
});

test("numbers keep the digits that are written, which a number could not hold", async () => {
  const [item] = await itemsOf(fileOf('{"serial": 12345678901234567890, "cost": 1.10}'));
  expect(item).toEqual({
    kind: "row",
    row: 1,
    cells: ["12345678901234567890", "1.10"],
    marks: new Map([
      [0, { kind: "number", stored: "12345678901234567890" }],
      [1, { kind: "number", stored: "1.10" }],
    ]),
  });
});

test.each([
  ['{"job": "2", "parts": [1}', "The line is no JSON from its character 26 on."],
  ['{"job": "2", "parts": [1', "The line is no JSON from its character 25 on."],
  ['{"job": {"a": 1}', "The line is no JSON from its character 17 on."],
  ['{"job": {"a": 1, "a": 2}}', "The key job.a is there twice."],
  ['{"job": "2", "job": "3"}', "The key job is there twice."],
  ['{"job": "2"', "The line is no JSON from its character 12 on."],
  ['{"job": "2"} x', "The line is no JSON from its character 14 on."],
  ['{"job": "\\q"}', "The line is no JSON from its character 13 on."],
  ["[1]", "The line is no JSON object."],
  ["Total 3", "The line is no JSON object."],
])("a line that is no flat object is handed out whole, and reading goes on: %s", async (line, problem) => {
  const items = await itemsOf(fileOf(`{"job": "1"}\n${line}\n{"job": "3"}\n`));
  expect(items.map(({ kind }) => kind)).toEqual(["row", "unread", "row"]);
  expect(items[1]).toMatchObject({ row: 2, raw: line, problem: { row: 2, problem } });
});

test("an object within the object stands under both keys, a list in one cell as it is written", async () => {
  const path = fileOf(
    '{"job": "1", "unit": {"serial": 12345678901234567890, "model": {"no": "A"}}, "parts": [{"no": "P\\"}]1", "qty": 1.10}, 2], "tags": []}\n{"job": "2", "unit": {}, "unit.serial": "S2"}',
  );
  expect((await lookAt(path)).header).toEqual(["job", "unit.serial", "unit.model.no", "parts", "tags"]);
  expect(await cellsOf(path)).toEqual([
    ["1", "12345678901234567890", "A", '[{"no": "P\\"}]1", "qty": 1.10}, 2]', "[]"],
    ["2", "S2", "", "", ""],
  ]);
});

test("objects that are nested too deep are one cell, however deep", async () => {
  const [item] = await itemsOf(fileOf(`{"a": ${'{"b": '.repeat(5000)}1${"}".repeat(5000)}}`));
  expect(item?.kind === "row" && item.cells.length).toBe(1);
});

// By definition: whatever JSON.parse gives for a flat object of texts must be read the same.
test("texts are read as JSON reads them, escapes and all", async () => {
  const texts = ['a"b', "a\\b", "a\nb\t", "é½", "\u2028", "\ud83d\udebf", "", " ", "\\u0041"];
  const lines = texts.map((text) => JSON.stringify({ [text]: text, x: text }));
  const items = await itemsOf(fileOf(['{"x": "1"}', ...lines].join("\n")));
  expect(items.slice(1).map((item) => item.kind === "row" && item.cells[0])).toEqual(texts);
});

test("a JSON document that is not one object a line is refused with what to do", async () => {
  expect(await refusalOf(fileOf('[\n{"job": 1}\n]'))).toContain("This is one JSON list, not a table.");
  expect(await refusalOf(fileOf('{\n"job": 1\n}'))).toContain("This is one JSON document, not a table.");
});
