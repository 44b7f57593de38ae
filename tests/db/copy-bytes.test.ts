import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { copyLine } from "@/db/copy-line";
import { CopyBytes } from "@/db/writes/staging/copy-bytes";
import { namedCells } from "@/db/writes/staging/named-cells";
import { rowWriter } from "@/db/writes/staging/row-writer";
import { shownJson, visible } from "@/db/writes/staging/shown-json";
import { odd } from "../intake/matching/odd-cells";
import { minimalStandard } from "../minimal-standard";

const awkward = [
  '"',
  "\\",
  "\t",
  "a\nb",
  "\r",
  "\u0001",
  "é",
  "\ud83d\ude00",
  "\ud800",
  "x\udc00y",
  "\u2028",
  "\x7f",
  "\\u0041",
];
const texts = [...odd, ...awkward, ...awkward.map((text) => `plain ${text} text`), "", "plain", "z".repeat(140_000)];
const draw = minimalStandard(97);
const drawn = () => texts[Math.floor(draw() * texts.length)] ?? "";

test("values are the bytes of their text", () => {
  for (const text of texts.filter((each) => !each.includes("\0"))) {
    const bytes = new CopyBytes();
    for (const value of [text, null, true, -1.5]) {
      bytes.value(value);
      bytes.byte(10);
    }
    expect(bytes.take().equals(Buffer.from([text, null, true, -1.5].map((each) => copyLine([each])).join("")))).toBe(
      true,
    );
  }
  expect(() => new CopyBytes().value("a\0b")).toThrow("NUL");
});

test("rows and records are the bytes of their lines, whatever headers and cells are", () => {
  const headers = [
    ["One"],
    ["Same", "Same", "", " ", "2024", "7", "__proto__"],
    ['q"', "b\\", "t\t", "\ud800", "Na\0me"],
  ];
  const rows = new CopyBytes();
  let expected = "";
  for (let round = 0; round < 1_000; round++) {
    const header = headers[round % headers.length] ?? [];
    const sparse = draw() < 0.5;
    const write = rowWriter({ header, sparse });
    const cells = Array.from({ length: Math.floor(draw() * (header.length + 2)) }, drawn);
    const marks = new Map([[0, { kind: "number" as const, stored: "12" }]]);
    const marked = draw() < 0.2;
    const problems =
      draw() < 0.3 ? [{ column: drawn(), value: drawn(), problem: "is wrong", fix: "Mend it." }] : undefined;
    const reason = draw() < 0.3 ? drawn() : undefined;
    const notes = draw() < 0.3 ? [{ raw: drawn() }] : [];
    const said = { records: [], notes, ...(problems && { problems }), ...(reason !== undefined && { reason }) };
    write.row(rows, { row: round, cells, ...(marked && { marks }) }, said);
    const bare = problems === undefined && reason === undefined;
    expected += copyLine([
      round,
      createHash("sha256")
        .update(`${cells.map(({ length }) => length)} ${cells.join("")}`)
        .digest("base64"),
      bare ? null : shownJson(namedCells(header, cells)),
      bare ? null : shownJson({ cells, ...(marked && { marks: [...marks] }) }),
      problems === undefined ? null : shownJson(problems),
      reason === undefined ? null : visible(reason),
      notes.length === 0 ? null : shownJson(notes),
      null,
    ]);
    const own = Object.fromEntries(cells.map((cell, place) => [`column_${place}`, cell]));
    const values = ["text", 3, true, undefined, null, visible(drawn())];
    write.record(rows, round, { kind: "jobs", cells: own, values });
    expected += copyLine([round, sparse ? shownJson(own) : null, null, true, ...values.map((value) => value ?? null)]);
  }
  expect(rows.take().equals(Buffer.from(expected))).toBe(true);
});

test("what was taken stays as it is while more is written", () => {
  const bytes = new CopyBytes();
  bytes.text("first\n");
  const taken = bytes.take();
  bytes.text("second and longer\n");
  expect([taken.toString(), bytes.length, bytes.take().toString()]).toEqual(["first\n", 18, "second and longer\n"]);
});
