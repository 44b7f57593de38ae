// A file of another program on its way in: chosen, looked at, matched, checked, added, its held row mended, and all taken back.
import { expect, type Page, test } from "@playwright/test";
import { chooseFile, patient, rowSum } from "./file-steps";
import { dirtyFile, dirtyRecords } from "./foreign-files";
import { isReadableAtEveryWidth } from "./readable";

const file = dirtyFile("office-export.csv");

test.describe.configure({ timeout: 300_000 });

test.describe("a file of another program", () => {
  let page: Page;
  let load = "";
  test.beforeAll(async ({ browser }) => {
    page = await (await browser.newContext()).newPage();
  });
  test.afterAll(async () => {
    await page.context().close();
  });

  test("its form is guessed with reasons, and its rows are shown as they were split", async () => {
    await chooseFile(page, file);
    await expect(heading(page)).toHaveText("office-export.csv: 13 rows under 17 columns");
    await expect(page.getByLabel("Between the columns")).toHaveValue("semicolon");
    await expect(page.getByLabel("Names of the columns stand in row")).toHaveValue("2");
    await expect(page.getByLabel("Decimal mark")).toHaveValue(",");
    await expect(page.getByRole("table")).toContainText("Won’t drain – café laundry, 40 °C");
    await isReadableAtEveryWidth(page);
  });

  test("another way of reading can be tried and given up again", async () => {
    await page.getByLabel("Between the columns").selectOption("comma");
    await page.getByRole("button", { name: "Read it again so" }).click();
    await expect(heading(page)).toContainText(/under [23] columns/, patient);
    await page.getByLabel("Between the columns").selectOption("semicolon");
    await page.getByRole("button", { name: "Read it again so" }).click();
    await expect(heading(page)).toContainText("under 17 columns", patient);
  });

  test("a draft that is left stays where it stands", async () => {
    await page.goto("/files");
    const draft = page.getByRole("table", { name: /not yet added/ }).getByRole("row", { name: /office-export/ });
    await expect(draft).toContainText("to be looked at");
    await draft.getByRole("link", { name: "Go on with office-export.csv" }).click();
    await expect(heading(page)).toContainText("under 17 columns");
  });

  test("each column has its match with a reason, and two columns for one of ours are refused with their names", async () => {
    await page.getByRole("button", { name: "Match columns" }).click();
    await expect(page.getByLabel("Job No goes to")).toHaveValue("job_number");
    await expect(page.getByLabel("Date completed goes to")).toHaveValue("completed_on");
    await expect(page.getByLabel("Unit price goes to")).toHaveValue("part-lines.unit_cost");
    await isReadableAtEveryWidth(page);
    await page.getByLabel("Fault found goes to").selectOption("complaint");
    await page.getByRole("button", { name: "Check rows" }).click();
    await expect(page.getByRole("region", { name: "One thing to put right" })).toContainText(
      "both matched to complaint",
    );
    await page.getByLabel("Fault found goes to").selectOption("cause");
  });

  test("the rows add up to the file, words that were left open are named, and so is the day that no calendar has", async () => {
    await page.getByLabel("pump means").selectOption("drain_pump");
    await page.getByRole("button", { name: "Check rows" }).click();
    await settleOpenWords(page);
    expect(await rowSum(page)).toEqual([8, 0, 0, 2, 3, dirtyRecords + 3]);
    const problems = page.getByRole("table", { name: "Rows with problems" });
    await expect(problems).toContainText("31-Feb-26");
    await expect(problems).toContainText("brd");
    await isReadableAtEveryWidth(page);
  });

  test("the report keeps the columns of the file and says where and what, with nothing that runs as a formula", async () => {
    const download = page.waitForEvent("download");
    await page.getByRole("link", { name: "Report as CSV" }).click();
    const chunks: Buffer[] = [];
    for await (const chunk of await (await download).createReadStream()) chunks.push(chunk);
    const [head, ...rows] = Buffer.concat(chunks).toString("utf8").trim().split("\r\n");
    expect(head).toMatch(/^Job No,Status,Make,.*,Technician,row,column,problem,suggestion$/);
    expect(rows).toHaveLength(2);
    expect(rows.join("\n")).toContain("31-Feb-26");
  });

  test("one cell is corrected before the load", async () => {
    const row = page.getByRole("row").filter({ hasText: "brd" });
    await row.getByRole("textbox").fill("control board");
    await row.getByRole("button", { name: "Correct" }).click();
    await expect(heading(page)).toContainText("9 new jobs; 1 row has a problem", patient);
  });

  test("the good rows are added, and the other waits in the tray", async () => {
    await page.getByRole("button", { name: "Add 9 jobs, hold 1 row back" }).click();
    await page.waitForURL(/\/files\/\d+$/, patient);
    load = new URL(page.url()).pathname.split("/").at(-1) ?? "";
    await isReadableAtEveryWidth(page);
    expect((await page.goto("/jobs/X-4401"))?.status()).toBe(200);
    await expect(page.getByRole("main")).toContainText("Won’t drain");
    expect((await page.goto("/jobs/X-4409"))?.status()).toBe(404);
  });

  test("the held row is corrected, seen to be good, and taken in", async () => {
    await page.goto(`/files/${load}`);
    await page.getByRole("link", { name: "Correct 1 row held back" }).click();
    await isReadableAtEveryWidth(page);
    await page.getByRole("textbox", { name: /Date completed/ }).fill("28-Apr-26");
    await page.getByRole("button", { name: "See what happens" }).click();
    await page.getByRole("button", { name: "Take in 1 row" }).click(patient);
    await expect(heading(page)).toHaveText("No row of office-export.csv waits");
    expect((await page.goto("/jobs/X-4409"))?.status()).toBe(200);
  });

  test("the same bytes are recognised, and the same header needs no more than two clicks", async () => {
    await chooseFile(page, file);
    await expect(heading(page)).toHaveText("office-export.csv was loaded before");
    await page.getByRole("button", { name: "Put the copy away" }).click();
    await chooseFile(page, dirtyFile("second-export.csv", "Y"));
    await expect(page.getByRole("button", { name: "Add 8 jobs, hold 2 rows back" })).toBeVisible(patient);
    await page.goto("/files");
    await page.getByRole("button", { name: "Drop second-export.csv" }).click();
    await expect(page.getByRole("main")).not.toContainText("second-export.csv");
  });

  test("both loads are taken back after their lists were seen", async () => {
    await page.goto("/files");
    const loads = page.getByRole("table", { name: "Loads, the latest first" });
    const addresses = await loads
      .getByRole("link", { name: /office-export/ })
      .evaluateAll((all) => all.map((link) => link.getAttribute("href") ?? ""));
    expect(addresses).toHaveLength(2);
    for (const address of addresses) {
      await page.goto(address);
      await page.getByRole("link", { name: "Take back this load" }).click();
      await expect(page.getByRole("main")).toContainText("Will be removed");
      await page.getByRole("button", { name: /^Take back load/ }).click();
      await expect(heading(page)).toContainText("taken back");
    }
    expect((await page.goto("/jobs/X-4401"))?.status()).toBe(404);
    expect((await page.goto("/jobs/X-4409"))?.status()).toBe(404);
  });
});

function heading(page: Page) {
  return page.getByRole("heading", { level: 1 });
}

/** A column that was matched by hand shows its words first; once seen, words that stay open hold their rows. */
async function settleOpenWords(page: Page) {
  await page.waitForURL(/\/(columns|rows)$/, patient);
  const sum = page.getByRole("table", { name: "What becomes of the rows" });
  await expect(sum.or(page.getByRole("button", { name: "Check rows" }))).toBeVisible(patient);
  if (!(await sum.isVisible())) await page.getByRole("button", { name: "Check rows" }).click();
  await expect(sum).toBeVisible(patient);
}
