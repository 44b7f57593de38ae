// A file on its way in: checked, added, recognised, taken back; and files that cannot be taken, each with its place.
import { expect, type Page, test } from "@playwright/test";
import { csvFile, jobRow, partLineRow, type SentFile, unitRow } from "./csv-files";
import { patient } from "./file-steps";

const serials = ["B25109700001", "B25109700002", "B25109700003"] as const;
const numbers = ["J-97001", "J-97002", "J-97003"] as const;
const units = csvFile("three-units.csv", serials.map(unitRow));
const jobs = csvFile(
  "three-jobs.csv",
  numbers.map((number, index) => jobRow(number, serials[index] ?? "")),
);

/** Work is done in a process of its own, which a busy machine starts slowly. */
test.describe.configure({ timeout: 480_000 });

test.describe("taking a file in", () => {
  let page: Page;
  let jobsBefore: string;
  test.beforeAll(async ({ browser }) => {
    page = await browser.newPage();
    jobsBefore = await jobCount(page);
  });
  test.afterAll(async () => {
    await page.close();
  });

  test("units and jobs are checked, added, recognised when sent again, and taken back", async () => {
    const unitLoad = await checkAndAdd(page, units, "units");
    const jobLoad = await checkAndAdd(page, jobs, "jobs");
    expect(countIn(await jobCount(page))).toBe(countIn(jobsBefore) + 3);
    await page.goto("/jobs/J-97002");
    await expect(page.getByRole("heading", { level: 1 })).toContainText("drain pump failed, completed Wed 15 Apr 2026");
    await expect(page.getByRole("complementary", { name: "What this is based on" })).toContainText("B25109700002");

    await send(page, jobs);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("three-jobs.csv was loaded before");
    await expect(page.getByRole("main")).toContainText(
      /You loaded this file on \d+ [A-Z][a-z]{2} \d{4}; all 3 rows are here/,
    );
    await expect(page.getByRole("button", { name: /^Add/ })).toHaveCount(0);

    await takeBack(page, jobLoad, "3 jobs");
    expect((await page.goto("/jobs/J-97002"))?.status()).toBe(404);
    await takeBack(page, unitLoad, "3 units");
    expect(await jobCount(page)).toBe(jobsBefore);
    await page.goto("/jobs?words=B251097000");
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("0 jobs in this view");

    await send(page, units);
    await expect(heading(page), "a file taken back may come again").toContainText("3 new units");
  });

  for (const { name, file, says } of badFiles()) {
    test(`${name}: a sentence names the place and what to do`, async () => {
      await send(page, file, says.atOnce);
      if (says.matched === true) await page.getByRole("button", { name: "Match columns" }).click();
      for (const words of says.sentences) await expect(page.getByRole("main")).toContainText(words);
      if (says.adds !== true) await expect(page.getByRole("button", { name: /^(Add|Change) / })).toHaveCount(0);
      if (says.cells !== undefined) {
        const row = page.getByRole("table", { name: "Rows with problems" }).locator("tbody tr").first();
        await expect(row.getByRole("rowheader")).toHaveText(says.cells[0]);
        await expect(row.getByRole("cell").nth(0)).toHaveText(says.cells[1]);
        await expect(row.getByRole("cell").nth(1)).toHaveText(says.cells[2]);
      }
    });
  }

  test("nothing of a refused file was stored", async () => {
    expect(await jobCount(page)).toBe(jobsBefore);
  });
});

interface BadFile {
  readonly name: string;
  readonly file: SentFile;
  readonly says: {
    /** Refused before it is sent. */
    readonly atOnce?: boolean;
    /** The good row can be added, and the spoiled one is held back. */
    readonly adds?: boolean;
    /** Its columns are to be matched first. */
    readonly matched?: boolean;
    readonly sentences: readonly (string | RegExp)[];
    /** Row, column and value of the first problem. */
    readonly cells?: readonly [string, string, string];
  };
}

/** Each spoils the second of its rows, row 3 as a spreadsheet counts. */
function badFiles(): readonly BadFile[] {
  const good = jobRow("J-97004", "B25349900004");
  const spoiled = (name: string, more: Readonly<Record<string, string>>) =>
    csvFile(name, [good, jobRow("J-97005", "B25349900004", more)]);
  const { completed_on: _, ...withoutDay } = good;
  const png = Buffer.from("89504e470d0a1a0a0000000d49484452", "hex");
  return [
    {
      name: "a picture",
      file: { name: "photo.png", mimeType: "image/png", buffer: png },
      says: { sentences: ["photo.png can’t be loaded", "This is a picture (PNG).", "Export the rows as CSV or XLSX."] },
    },
    {
      name: "an empty file",
      file: { name: "empty.csv", mimeType: "text/csv", buffer: Buffer.alloc(0) },
      says: { atOnce: true, sentences: ["empty.csv is empty. Choose the file that holds the rows."] },
    },
    {
      name: "a missing column",
      file: csvFile("no-day.csv", [withoutDay]),
      says: { matched: true, sentences: ["Which column is completed_on?", "Every row of jobs needs it"] },
    },
    {
      name: "an unknown component",
      file: spoiled("component.csv", { component: "flux_gland" }),
      says: {
        adds: true,
        sentences: ["component.csv: 1 new job; 1 row has a problem"],
        cells: ["3", "component", "flux_gland"],
      },
    },
    {
      name: "an impossible date",
      file: spoiled("date.csv", { completed_on: "2026-02-30" }),
      says: { adds: true, sentences: [/no day of the calendar/], cells: ["3", "completed_on", "2026-02-30"] },
    },
    {
      name: "a return of more than was used",
      file: csvFile("quantity.csv", [{ ...partLineRow("J-10004", "1"), line: "8" }, partLineRow("J-10004", "-2")]),
      says: {
        adds: true,
        sentences: ["takes back more than the 1 of row 2", "Correct the quantities so that they agree."],
        cells: ["3", "quantity", "-2"],
      },
    },
    {
      name: "a serial of another model",
      file: spoiled("model.csv", { model: "BHW40-S2", product_type: "dishwasher" }),
      says: {
        adds: true,
        sentences: [/belongs to model BHF27-W3; this row says BHW40-S2/, "Correct the serial or the model."],
        cells: ["3", "serial", "B25349900004"],
      },
    },
    {
      name: "a cell of a megabyte",
      file: spoiled("long.csv", { complaint: "x".repeat(1024 * 1024) }),
      says: { adds: true, sentences: [/row 3|Row 3|complaint/] },
    },
  ];
}

async function send(page: Page, file: SentFile, refusedAtOnce = false) {
  await page.goto("/files/new");
  await page.getByLabel("File", { exact: true }).setInputFiles(file);
  await page.getByRole("button", { name: "Check rows" }).click();
  if (!refusedAtOnce) await page.waitForURL(/\/(look|rows)$/, patient);
}

/** Number of the load. */
async function checkAndAdd(page: Page, file: SentFile, kind: string): Promise<string> {
  await send(page, file);
  await expect(heading(page)).toHaveText(`${file.name}: 3 new ${kind}; every row is good`);
  const sum = page.getByRole("table", { name: "What becomes of the rows" });
  const rows = (await sum.getByRole("cell").allTextContents()).map(Number);
  expect(rows, "new, changed, already here, held back, left out, in the file").toEqual([3, 0, 0, 0, 0, 3]);
  await page.getByRole("button", { name: `Add 3 ${kind}` }).click();
  await page.waitForURL(/\/files\/\d+$/, patient);
  await expect(page.getByRole("heading", { level: 1 })).toContainText(`${file.name}: 3 added, 0 changed`);
  return new URL(page.url()).pathname.split("/").at(-1) ?? "";
}

async function takeBack(page: Page, load: string, removed: string) {
  await page.goto(`/files/${load}`);
  await page.getByRole("link", { name: "Take back this load" }).click();
  await expect(page.getByRole("main")).toContainText(removed);
  await page.getByRole("button", { name: `Take back load ${load}` }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("taken back");
}

function heading(page: Page) {
  return page.getByRole("heading", { level: 1 });
}

async function jobCount(page: Page): Promise<string> {
  await page.goto("/jobs");
  return (await page.getByRole("heading", { level: 1 }).textContent()) ?? "";
}

function countIn(title: string): number {
  return Number(title.replaceAll(/\D/g, ""));
}
