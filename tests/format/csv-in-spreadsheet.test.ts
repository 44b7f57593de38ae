// What we write is opened by a spreadsheet that is not ours, LibreOffice, where it is installed (Debian:
// libreoffice-calc), told to take everything for a formula or a number that can be one.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { SaxesParser } from "saxes";
import { afterAll, describe, expect, test } from "vitest";
import { type CsvCell, csvText } from "@/lib/format/csv-text";

const program = "soffice";
const hasOffice = spawnSync(program, ["--version"]).error === undefined;
if (!hasOffice) console.log("LibreOffice is not installed, so its reading of our tables is left out.");

const folder = mkdtempSync(join(tmpdir(), "ohmsworth-spreadsheet-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Cell {
  readonly formula: string | undefined;
  readonly type: string | undefined;
  readonly text: string;
}

/** Cells of the table as the program read them: comma, quotation marks, UTF-8, formulas and numbers wherever there can be any. */
function opened(csv: string): readonly Cell[] {
  const path = join(folder, "table.csv");
  writeFileSync(path, csv);
  execFileSync(
    program,
    [
      "--headless",
      `-env:UserInstallation=${pathToFileURL(join(folder, "profile")).href}`, // nobody's own settings
      "--infilter=CSV:44,34,76,1,,1033,false,true,false,false,false,-1,true",
      ...["--convert-to", "fods", "--outdir", folder, path],
    ],
    { stdio: "ignore", timeout: 120_000 },
  );
  return cellsOf(readFileSync(join(folder, "table.fods"), "utf8"));
}

function cellsOf(xml: string): readonly Cell[] {
  const cells: Cell[] = [];
  let open: { formula: string | undefined; type: string | undefined; lines: string[] } | undefined;
  const parser = new SaxesParser();
  parser.on("opentag", ({ name, attributes }) => {
    if (name === "table:table-cell")
      open = { formula: attributes["table:formula"], type: attributes["office:value-type"], lines: [] };
    if (name === "text:p") open?.lines.push("");
    if (name === "text:s") add(" ".repeat(Number(attributes["text:c"] ?? 1)));
    if (name === "text:tab") add("\t");
  });
  const add = (text: string) => {
    if (open !== undefined && open.lines.length > 0) open.lines.push(`${open.lines.pop()}${text}`);
  };
  parser.on("text", add);
  parser.on("closetag", ({ name }) => {
    if (name !== "table:table-cell" || open === undefined) return;
    cells.push({ formula: open.formula, type: open.type, text: open.lines.join("\n") });
    open = undefined;
  });
  parser.write(xml).close();
  return cells;
}

const beginnings = [
  "=",
  "+",
  "-",
  "@",
  "\t=",
  "\r=",
  "\n=",
  "\0=",
  " =",
  "\u00a0=",
  "＝",
  "＋",
  "－",
  "＠",
  '"=',
  "'=",
  ";=",
  ",=",
];
const bodies = [
  "1+1",
  "SUM(A1:A9)",
  'HYPERLINK("http://a.example","b")',
  "cmd|' /C calc'!A0",
  '1,2;"3"',
  "1+1\r\n=2+2",
  "2+5+cmd",
];
const risky = beginnings.flatMap((beginning) => bodies.map((body) => `${beginning}${body}`));

describe.skipIf(!hasOffice)("LibreOffice", () => {
  test("runs what is not guarded, so that it would show", () => {
    const cells = opened("a,b\r\n=1+1,-2\r\n");
    expect(cells.filter(({ formula }) => formula !== undefined)).toHaveLength(1);
  });

  test("finds no formula in a table of ours, whatever stands in its text, and every number is one", () => {
    const numbers: CsvCell[] = [-12.5, 0, 1e-7, "-7", "-12.50"];
    const rows = risky.map((text, n) => [text, `Said: ${text}`, numbers[n % numbers.length], text]);
    const cells = opened(csvText(["=1+1", "words", "number", "@last"], rows));
    expect(cells.filter(({ formula }) => formula !== undefined)).toEqual([]);
    expect(cells.filter(({ type }) => type === "float").length).toBe(rows.length);
    expect(cells.length).toBeGreaterThanOrEqual(4 * rows.length);
  });
});
