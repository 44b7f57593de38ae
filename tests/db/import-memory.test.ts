import { createWriteStream } from "node:fs";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { afterAll, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { loadFile } from "@/db/writes/load-file";
import { fileFolder, shopDocument, startAfresh, today } from "./intake-files";

const files = fileFolder();
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

/** A file that is never whole in memory. Every tenth row is wrong, so that problems are many too. */
async function writeUnits(rows: number): Promise<string> {
  const path = join(files.folder, `${rows}.csv`);
  function* lines() {
    yield "maker,model,product_type,serial,installed_on\n";
    for (let row = 0; row < rows; row++)
      yield `Hearth-Wick,FW5500,front_load_washer,S${row},${row % 10 === 0 ? "2023-02-30" : "2023-02-28"}\n`;
  }
  await pipeline(Readable.from(lines()), createWriteStream(path));
  return path;
}

async function megabytesFor(rows: number): Promise<number> {
  const path = await writeUnits(rows);
  let most = 0;
  const watch = setInterval(() => {
    most = Math.max(most, process.memoryUsage().rss);
  }, 20);
  const result = await loadFile({ path, fileName: "units.csv", mode: "dry run", today });
  clearInterval(watch);
  expect(result).toMatchObject({
    kind: "checked",
    report: { rowsTotal: rows, rowsNew: rows * 0.9, rowsHeld: rows / 10 },
  });
  return most / 2 ** 20;
}

test("memory does not grow with the file", async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  const small = await megabytesFor(150_000);
  const large = await megabytesFor(450_000);
  console.info(`150,000 rows: ${small.toFixed(0)} MB, 450,000 rows: ${large.toFixed(0)} MB`);
  // Held in memory, the larger file's cells alone would take some 190 MB more. Smaller files only show the heap filling up.
  expect(large - small).toBeLessThan(120);
});
