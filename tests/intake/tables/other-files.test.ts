import { readFileSync } from "node:fs";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { lookAtTable } from "@/lib/intake/tables/look-at-table";
import { fileOf, lookAt, refusalOf } from "./table-files";
import { zipFile } from "./zip-file";

// Content decides, not the name: every one of these is named jobs.xlsx or jobs.csv.
const fixture = (name: string) =>
  readFileSync(fileURLToPath(new URL(`../../reference/workbooks/${name}`, import.meta.url)));

/** The beginning of a compound file that holds a locked workbook. Source: MS-OFFCRYPTO 2.3.4.4, stream names. */
const locked = Buffer.concat([
  Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
  Buffer.alloc(1024),
  Buffer.from("EncryptedPackage", "utf16le"),
  Buffer.alloc(1024),
]);

test.each<readonly [string, string | Uint8Array, string]>([
  ["jobs.xlsx", fixture("office.xls"), "This is a workbook of the old kind (XLS)"],
  ["jobs.xlsx", fixture("office.ods"), "This is an OpenDocument file (ODS), not XLSX."],
  ["jobs.xlsx", locked, "The workbook is protected by a password."],
  [
    "jobs.xlsx",
    "<html><body><table><tr><td>Job</td></tr></table></body></html>",
    "This is a web page (HTML), whatever its name says.",
  ],
  ["jobs.xlsx", '\ufeff<!DOCTYPE html>\n<html lang="en">', "This is a web page (HTML), whatever its name says."],
  ["jobs.csv", '<?xml version="1.0"?><Workbook/>', "This is XML, not a table."],
  ["jobs.xlsx", zipFile([{ name: "a.txt", content: "a" }]), "This is a ZIP archive, not a workbook."],
  ["jobs.xlsx", zipFile([]), "This is a ZIP archive, not a workbook."],
  [
    "jobs.xlsx",
    zipFile([{ name: "word/document.xml", content: "<d/>" }]),
    "This is a text document (DOCX), not a workbook.",
  ],
  ["jobs.csv", "%PDF-1.7\n", "This is a PDF document."],
  ["jobs.csv", Uint8Array.of(0xff, 0xd8, 0xff, 0xe0), "This is a picture (JPEG)."],
  ["jobs.csv", Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d), "This is a picture (PNG)."],
  ["jobs.csv", Uint8Array.of(0x1f, 0x8b, 8), "This is a compressed file (GZIP)."],
  [
    "jobs.csv",
    Uint8Array.from({ length: 5000 }, (_, place) => (place * 7919) % 31),
    "This is no text, nor a workbook.",
  ],
  ["jobs.csv", "", "The file is empty."],
  ["jobs.csv", " \n\n\t \n", "The file has nothing in it but blanks."],
])("%s, whatever its name says", async (name, content, problem) => {
  const refusal = await refusalOf(fileOf(content, name));
  expect(refusal).toContain(problem);
  expect(refusal).toMatch(/[.] [A-Z][^\n]*[.]$/);
});

test("a folder, and a file that is not there", async () => {
  const path = fileOf("a");
  expect(await refusalOf(dirname(path))).toContain("This is a folder, not a file.");
  expect(await refusalOf(`${path}-none`)).toContain("There is no file of this name.");
});

test("a CSV file named as a workbook is read as what it is", async () => {
  expect((await lookAt(fileOf("Job,Cost\n1,2\n", "jobs.xlsx"))).form.kind).toBe("text");
});

test("a file of separators only has no rows", async () => {
  expect(await lookAtTable(fileOf(",,,\n,,,\n"))).toMatchObject({ ok: false });
});
