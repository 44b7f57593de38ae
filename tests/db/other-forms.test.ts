import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { loadTable } from "@/db/writes/load-table";
import { takeBack } from "@/db/writes/take-back";
import type { TableForm } from "@/lib/intake/tables/table-form";
import { workbookParts, zipFile } from "../intake/tables/zip-file";
import { batchOf, csv, fileFolder, type Row, shopDocument, startAfresh, today } from "./intake-files";
import { counts } from "./load-outcome";
import { stateOfData } from "./state-of-data";
import { commaText, exported, matching } from "./table-files";

const files = fileFolder();
beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const part = (number: string, quantity: number, cost: string) => ({ Part: number, Qty: quantity, "Unit cost": cost });
const rows: readonly Row[] = [
  exported("J1", "812000000417", part("P-200", 1, "41.50")),
  exported("J1", "812000000417", part("P-100", 2, "3.25")),
  exported("J2", "0081200", { ...part("0000042", 1, "12.00"), Called: "2/28/2024", Done: "2/29/2024" }),
  exported("J3", "", { Note: "½ of the 5 Ω band is “open” – café,\nsecond line" }),
  exported("J4", "A4", { Called: "5/20/2023" }), // completed before it was reported: held
];
const columns = Object.keys(exported("", ""));

/** Text that a workbook keeps as text, numbers as numbers, and days as days counted from its base, in several formats. */
function workbook(dateBase: 1900 | 1904): Buffer {
  const header = columns.map((name, place) => textCell(name, place, 1));
  const lines = rows.map((row, index) =>
    columns.map((name, place) => cell(name, String(row[name] ?? ""), place, index + 2)),
  );
  const sheet = [header, ...lines].map((cells, index) => `<row r="${index + 1}">${cells.join("")}</row>`).join("");
  const workbookProperties = dateBase === 1904 ? 'date1904="1"' : "";
  return zipFile(workbookParts({ rows: sheet, workbookProperties }));

  function cell(name: string, text: string, place: number, row: number): string {
    if (text === "") return "";
    if (name === "Called" || name === "Done") {
      const [month = 0, day = 0, year = 0] = text.split("/").map(Number);
      const days =
        (Date.UTC(year, month - 1, day) -
          Date.UTC(dateBase === 1904 ? 1904 : 1899, dateBase === 1904 ? 0 : 11, dateBase === 1904 ? 1 : 30)) /
        86_400_000;
      return `<c r="${at(place, row)}" s="${name === "Done" ? 2 : 1}"><v>${days}</v></c>`;
    }
    const number = name === "Qty" || name === "Unit cost" || text === "812000000417";
    return number ? `<c r="${at(place, row)}"><v>${Number(text)}</v></c>` : textCell(text, place, row);
  }
}

function textCell(text: string, place: number, row: number): string {
  const safe = text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  return `<c r="${at(place, row)}" t="inlineStr"><is><t xml:space="preserve">${safe}</t></is></c>`;
}

function at(place: number, row: number): string {
  return `${String.fromCharCode(65 + place)}${row}`;
}

const text = csv(rows, columns);
const tabs = [columns, ...rows.map((row) => columns.map((name) => String(row[name] ?? "")))]
  .map((cells) => cells.map((each) => (/["\n\t]/.test(each) ? `"${each.replaceAll('"', '""')}"` : each)).join("\t"))
  .join("\n");
const utf16 = (order: "le" | "be") => {
  const bytes = Buffer.from(`\ufeff${text}`, "utf16le");
  return order === "le" ? bytes : bytes.swap16();
};
const objects = rows
  .map((row) => JSON.stringify(Object.fromEntries(columns.map((name) => [name, row[name] ?? ""]))))
  .join("\n");

const sheet = { kind: "workbook", sheet: "Jobs", headerRow: 1 } as const;
const forms: readonly (readonly [name: string, content: string | Buffer, form: TableForm])[] = [
  ["tabs", tabs, { ...commaText, delimiter: "\t" } as TableForm],
  ["UTF-16, low byte first", utf16("le"), { ...commaText, encoding: "utf-16le" } as TableForm],
  ["UTF-16, high byte first", utf16("be"), { ...commaText, encoding: "utf-16be" } as TableForm],
  ["JSON Lines", objects, { kind: "lines", encoding: "utf-8" }],
  ["a workbook that counts from 1900", workbook(1900), { ...sheet, dateBase: 1900 }],
  ["a workbook that counts from 1904", workbook(1904), { ...sheet, dateBase: 1904 }],
];

let written = 0;
async function loaded(content: string | Buffer, form: TableForm) {
  const path = join(files.folder, `form-${++written}`);
  writeFileSync(path, content);
  return await loadTable({ path, fileName: "export", form, matching, mode: "add and set aside", today });
}

// D6: the rows decide, not the file. CSV is the yardstick; each other form must say word for word the same.
describe.each(forms)("%s", (_, content, form) => {
  test("after the same rows as CSV: nothing new, nothing changed", async () => {
    expect(counts(await loaded(text, commaText))).toEqual([5, 4, 0, 0, 1]);
    const before = await stateOfData();
    expect(counts(await loaded(content, form))).toEqual([5, 0, 0, 4, 1]);
    expect(await stateOfData()).toEqual(before);
  });

  test("before them: the same data, and again nothing new or changed", async () => {
    await loaded(text, commaText).then((result) => batchOf(result));
    const byText = await stateOfData();
    await startAfresh();
    await files.load(JSON.stringify(shopDocument));
    const bare = await stateOfData();
    const first = await loaded(content, form);
    expect(counts(first)).toEqual([5, 4, 0, 0, 1]);
    expect(await stateOfData()).toEqual(byText);
    const second = await loaded(text, commaText);
    expect(counts(second)).toEqual([5, 0, 0, 4, 1]);
    await takeBack(batchOf(first));
    expect(await stateOfData(), "the second load answers for its rows").toEqual(byText);
    await takeBack(batchOf(second));
    expect(await stateOfData()).toEqual(bare);
  });
});
