// Rows that were held back, corrected in the tray: one, all alike, or left out; and a file taken in with the keyboard alone.
import { expect, type Locator, type Page, test } from "@playwright/test";
import { csvFile, jobRow } from "./csv-files";
import { addRows, chooseFile, patient, rowSum, takeBackLoad } from "./file-steps";

const serial = "B25109800001";
const held = csvFile("held-jobs.csv", [
  jobRow("J-98001", serial),
  jobRow("J-98002", serial, { component: "flux_gland" }),
  jobRow("J-98003", serial, { component: "flux_gland" }),
  jobRow("J-98004", serial, { completed_on: "2026-04-31" }),
  jobRow("J-98005", serial, { completed_on: "2026-02-30" }),
]);

/** Columns as another program names them. */
const names: Readonly<Record<string, string>> = {
  job_number: "Ticket no",
  status: "Status",
  maker: "Make",
  model: "Model no",
  product_type: "Product type",
  serial: "Serial no",
  requested_on: "Called on",
  completed_on: "Date completed",
  complaint: "Complaint",
  component: "Failed component",
};
const theirs = csvFile(
  "by-keyboard.csv",
  [jobRow("J-98011", serial), jobRow("J-98012", serial, { completed_on: "2026-04-31" })].map((row) =>
    Object.fromEntries(Object.entries(names).map(([ours, name]) => [name, { ...row }[ours] ?? ""])),
  ),
);

test.describe.configure({ timeout: 300_000 });
test.use({ actionTimeout: 90_000 });

test.describe("rows held back", () => {
  let page: Page;
  const loads: string[] = [];
  test.beforeAll(async ({ browser }) => {
    page = await browser.newPage();
  });
  test.afterAll(async () => {
    await page.close();
  });

  test("rows that are wrong alike are corrected together", async () => {
    await chooseFile(page, held);
    expect(await rowSum(page)).toEqual([1, 0, 0, 4, 0, 5]);
    loads.push(await addRows(page));
    await page.getByRole("link", { name: "Correct 4 rows held back" }).click();
    const row = page.getByRole("row").filter({ hasText: "flux_gland" });
    await row.getByRole("textbox", { name: "component in row 3 is to be" }).fill("inlet_gland");
    await row.getByRole("button", { name: "See what happens to all 2" }).click();
    await expect(row.getByRole("status"), "the correction is judged like any cell").toContainText(
      "is not a component",
      patient,
    );
    await row.getByRole("textbox", { name: "component in row 3 is to be" }).fill("drain_pump");
    await row.getByRole("button", { name: "See what happens to all 2" }).click();
    await row.getByRole("button", { name: "Take in 2 rows" }).click(patient);
    await expect(heading(page)).toHaveText("2 rows of held-jobs.csv wait to be corrected", patient);
    expect((await page.goto("/jobs/J-98003"))?.status()).toBe(200);
  });

  test("one row is corrected by itself, with all of its cells in view", async () => {
    await page.goto(`/files/${loads[0]}/held`);
    await page.getByRole("link", { name: "Row 5", exact: true }).click();
    await expect(heading(page)).toHaveText("Row 5: waits to be corrected");
    await page.getByLabel("completed_on").fill("2026-04-30");
    await page.getByRole("button", { name: "See what happens" }).click();
    await page.getByRole("button", { name: "Take in 1 row" }).click(patient);
    await expect(heading(page)).toHaveText("1 row of held-jobs.csv waits to be corrected", patient);
    expect((await page.goto("/jobs/J-98004"))?.status()).toBe(200);
  });

  test("a row is left out with a reason, which stays with it", async () => {
    await page.goto(`/files/${loads[0]}/held`);
    await page.getByText("Leave out", { exact: true }).click();
    await page.getByLabel("Why").fill("Entered twice");
    await page.getByRole("button", { name: "Leave row 6 out" }).click();
    await expect(heading(page)).toHaveText("No row of held-jobs.csv waits", patient);
    await page.goto(`/files/${loads[0]}/held/6`);
    await expect(heading(page)).toHaveText("Row 6: left out");
    await expect(page.getByRole("main")).toContainText("Entered twice");
    expect((await page.goto("/jobs/J-98005"))?.status()).toBe(404);
  });

  test("a file is chosen, looked at, matched, checked, corrected and added with the keyboard alone", async () => {
    await page.goto("/files/new");
    const file = page.getByLabel("File", { exact: true });
    await tabTo(page, file);
    await file.setInputFiles(theirs); // the dialog that a key opens is the system's own
    await press(page, page.getByRole("button", { name: "Check rows" }));
    await page.waitForURL(/\/look$/, patient);
    await press(page, page.getByRole("button", { name: "Match columns" }));
    await page.waitForURL(/\/columns$/, patient);
    await expect(page.getByLabel("Ticket no goes to")).toHaveValue("job_number");
    await press(page, page.getByRole("button", { name: "Check rows" }));
    expect(await rowSum(page)).toEqual([1, 0, 0, 1, 0, 2]);
    await tabTo(page, page.getByRole("textbox", { name: "Date completed in row 3 is to be" }));
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("2026-04-30");
    await page.keyboard.press("Enter");
    await expect(heading(page)).toContainText("2 new jobs; every row is good", patient);
    await press(page, page.getByRole("button", { name: "Add 2 jobs" }));
    await page.waitForURL(/\/files\/\d+$/, patient);
    loads.push(new URL(page.url()).pathname.split("/").at(-1) ?? "");
  });

  test("a load is taken back with what was corrected of it", async () => {
    for (const load of loads) await takeBackLoad(page, load);
    for (const job of ["J-98001", "J-98011", "J-98012"])
      expect((await page.goto(`/jobs/${job}`))?.status(), job).toBe(404);
  });
});

/** Moves the focus forward until it is there; a person would give up long before the limit. */
async function tabTo(page: Page, target: Locator) {
  await expect(target).toBeVisible(patient);
  for (let pressed = 0; pressed < 200; pressed++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error("the keyboard does not get there");
}

async function press(page: Page, button: Locator) {
  await tabTo(page, button);
  await page.keyboard.press("Enter");
}

function heading(page: Page) {
  return page.getByRole("heading", { level: 1 });
}
