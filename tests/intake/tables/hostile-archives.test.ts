import { crc32, createDeflateRaw } from "node:zlib";
import { beforeAll, expect, test } from "vitest";
import { fileOf, refusalOf } from "./table-files";
import { withPart, workbookParts, type ZipPart, zipFile } from "./zip-file";

// A workbook cannot exhaust us: each of these is refused within 5 seconds, and memory grows by less than 200 MB. The
// seconds are those that this process worked, so that a busy machine does not fail the test.

async function refusedQuickly(path: string): Promise<string> {
  const before = process.memoryUsage().rss;
  let most = before;
  const watch = setInterval(() => {
    most = Math.max(most, process.memoryUsage().rss);
  }, 5);
  const start = process.cpuUsage();
  const refusal = await refusalOf(path);
  clearInterval(watch);
  const worked = process.cpuUsage(start);
  expect(worked.user + worked.system).toBeLessThan(5_000_000);
  expect(Math.max(most, process.memoryUsage().rss) - before).toBeLessThan(200_000_000);
  return refusal;
}

/** So many bytes of one short text over and over within an element, folded without ever holding them. */
async function foldedRepeats(
  root: string,
  text: string,
  bytes: number,
): Promise<{ folded: Buffer; crc: number; bytes: number }> {
  const piece = Buffer.from(text.repeat(Math.ceil(1_000_000 / text.length)));
  const deflate = createDeflateRaw({ level: 9 });
  const chunks: Buffer[] = [];
  deflate.on("data", (chunk: Buffer) => chunks.push(chunk));
  let crc = 0;
  const pieces = Math.ceil(bytes / piece.length);
  let length = 0;
  const write = async (bytes: Buffer) => {
    crc = crc32(bytes, crc);
    length += bytes.length;
    if (!deflate.write(bytes)) await new Promise((resolve) => deflate.once("drain", resolve));
  };
  await write(Buffer.from(`<${root}>`));
  for (let place = 0; place < pieces; place++) await write(piece);
  await write(Buffer.from(`</${root}>`));
  deflate.end();
  await new Promise((resolve) => deflate.once("end", resolve));
  return { folded: Buffer.concat(chunks), crc, bytes: length };
}

let rows: Awaited<ReturnType<typeof foldedRepeats>>;
let texts: Awaited<ReturnType<typeof foldedRepeats>>;
beforeAll(async () => {
  rows = await foldedRepeats("worksheet", "<row><c><v>1</v></c></row>", 400_000_000);
  texts = await foldedRepeats("sst", "<si><t>text</t></si>", 150_000_000);
}, 120_000);

const sheet = "xl/worksheets/sheet1.xml";
const bomb = (name: string, part: Partial<ZipPart>) =>
  fileOf(zipFile(withPart(workbookParts(), { name, content: "", ...part })));

test("a sheet that unfolds too far, and says so", async () => {
  const { folded, bytes, crc } = rows;
  expect(folded.length).toBeLessThan(2_000_000);
  expect(await refusedQuickly(bomb(sheet, { folded, claimedBytes: bytes, crc }))).toContain(
    "The workbook holds more than 200 MB once it is unfolded.",
  );
});

test.each([1, 1000, 199_000_000])(
  "a sheet that unfolds too far and claims %i bytes",
  async (claimedBytes) => {
    expect(await refusedQuickly(bomb(sheet, { folded: rows.folded, claimedBytes }))).toMatch(/The workbook is damaged/);
  },
  30_000,
);

test("ten gigabytes claimed in a file of a few kilobytes", async () => {
  const parts = Array.from({ length: 3 }, (_, n) => ({ name: `${n}.xml`, content: "", claimedBytes: 3_500_000_000 }));
  expect(await refusedQuickly(fileOf(zipFile([...workbookParts(), ...parts])))).toContain("more than 200 MB");
});

test("shared texts without end", async () => {
  const { folded, bytes, crc } = texts;
  const path = bomb("xl/sharedStrings.xml", { folded, claimedBytes: bytes, crc });
  expect(await refusedQuickly(path)).toContain("The workbook has more than 1 million different texts.");
});

test("one long shared text in a million cells", async () => {
  const cells = '<c t="s"><v>0</v></c>'.repeat(100);
  const path = fileOf(
    zipFile(
      workbookParts({ rows: `<row>${cells}</row>`.repeat(1000), texts: `<si><t>${"x".repeat(1_000_000)}</t></si>` }),
    ),
  );
  expect(await refusedQuickly(path)).toContain("The workbook holds more than 200 MB once it is unfolded.");
});

test.each([
  ["XFD", 200_000, "Row 1 of the sheet has a cell beyond column 2000."],
  ["BXX", 200_000, "The workbook has more than 20 million cells."], // column 2000
])("a cell in column %s of %i rows", async (column, count, refusal) => {
  const far = Array.from({ length: count }, (_, row) => `<row><c r="${column}${row + 1}"><v>1</v></c></row>`).join("");
  expect(await refusedQuickly(fileOf(zipFile(workbookParts({ rows: far }))))).toContain(refusal);
});

test("more rows than a sheet has", async () => {
  const path = fileOf(zipFile(workbookParts({ rows: "<row/>".repeat(5_000_000) })));
  expect(await refusedQuickly(path)).toContain("it has more than 1048576 rows in a sheet");
});

test("sixty-five thousand parts", async () => {
  const parts = Array.from({ length: 65_000 }, (_, n) => ({ name: `${n}.xml`, content: "" }));
  expect(await refusedQuickly(fileOf(zipFile(parts)))).toContain(
    "The archive has 65000 parts; a workbook has at most 2000.",
  );
});

test("archives within archives are not opened", async () => {
  const inner = zipFile(workbookParts());
  expect(await refusedQuickly(fileOf(zipFile([{ name: "jobs.xlsx", content: inner }])))).toContain(
    "This is a ZIP archive, not a workbook.",
  );
});

const declared = (inside: string, used: string) =>
  fileOf(
    zipFile(
      withPart(workbookParts(), {
        name: sheet,
        content: `<?xml version="1.0"?><!DOCTYPE w [${inside}]><worksheet>${used}</worksheet>`,
      }),
    ),
  );

test.each([
  ["entities that multiply", '<!ENTITY a "x"><!ENTITY b "&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;">', "&c;"],
  ["an entity outside the file", '<!ENTITY a SYSTEM "file:///etc/hostname">', "&a;"],
  ["a document type without use", "", ""],
])("%s", async (_, inside, used) => {
  expect(await refusedQuickly(declared(inside, used))).toContain("The workbook declares a document type");
});

test.each([
  ["a comment", "<!--", "x"],
  ["a text", "<worksheet>", "x"],
  ["a tag", "<worksheet ", "x"],
  ["a document type", "<!DOCTYPE ", "x"],
])("%s that never ends", async (_, opening, filling) => {
  const path = fileOf(
    zipFile(withPart(workbookParts(), { name: sheet, content: opening + filling.repeat(60_000_000) })),
  );
  expect(await refusedQuickly(path)).toContain("its XML goes on without an end");
});

test.each(["../../etc/x.xml", "/etc/x.xml", "xl\\..\\..\\x.xml", "C:/x.xml"])("a part named %s", async (name) => {
  expect(await refusedQuickly(fileOf(zipFile([...workbookParts(), { name, content: "" }])))).toContain(
    "The archive has a part whose name points outside of it",
  );
});

test("two parts of one name", async () => {
  expect(await refusedQuickly(fileOf(zipFile([...workbookParts(), ...workbookParts()])))).toContain(
    "two parts are named",
  );
});
