// Jobs with covered work that tests may claim. What one test claims, none after it on the same site can claim again, and so
// small a company as the tests' has hardly more than the ten jobs of the no-drain cases that can still be filed.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { csvFile, jobRow, partLineRow, unitRow } from "./csv-files";

/** More than all tests of a site claim. */
const howMany = 24;

/** In the text of a row: jobs that no other test counts on. */
export const isFree = /FREE-\d\d/;

/** @returns paths of files to load, in order */
export function writeFreeJobs(folder: string): string[] {
  const numbers = Array.from({ length: howMany }, (_, i) => String(i + 1).padStart(2, "0"));
  const visit = { requested_on: "2026-10-14", completed_on: "2026-10-16", labour: "80.00" };
  const files = [
    csvFile(
      "free-units.csv",
      numbers.map((n) => ({
        ...unitRow(`BFREE${n}`),
        sold_on: "2026-06-01",
        installed_on: "2026-06-08",
        territory: "US-OH",
      })),
    ),
    csvFile(
      "free-jobs.csv",
      numbers.map((n) => jobRow(`FREE-${n}`, `BFREE${n}`, visit)),
    ),
    csvFile(
      "free-part-lines.csv",
      numbers.map((n) => partLineRow(`FREE-${n}`, "1")),
    ),
  ];
  return files.map(({ name, buffer }) => {
    const path = join(folder, name);
    writeFileSync(path, buffer);
    return path;
  });
}

/** Number of a job of which no claim was made. */
export async function freeJob(page: Page): Promise<string> {
  await page.goto("/claims");
  const [job] = await page.getByRole("rowheader").filter({ hasText: isFree }).getByRole("link").allTextContents();
  expect(job, "a free job").toBeDefined();
  return job ?? "";
}
