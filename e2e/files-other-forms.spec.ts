// Files of other forms and origins through the same six steps: a workbook, and repair records of real events.
import { fileURLToPath } from "node:url";
import { expect, type Page, test } from "@playwright/test";
import { addRows, chooseFile, patient, rowSum, takeBackLoad } from "./file-steps";

// Written by openpyxl 3.1.5 with the script beside it; and Open Repair data, see tests/reference/SOURCES.md.
const workbook = kept("workbooks/library-sheets.xlsx");
const repairs = kept("data/openrepair_appliances_with_age.csv");
const repairRecords = 618;

test.describe.configure({ timeout: 300_000 });
test.use({ actionTimeout: 90_000 });

test.describe("files of other forms", () => {
  let page: Page;
  test.beforeAll(async ({ browser }) => {
    page = await browser.newPage();
  });
  test.afterAll(async () => {
    await page.close();
  });

  test("of a workbook's sheets a person names one, gives what no column holds, and sees what its rows still lack", async () => {
    await chooseFile(page, workbook);
    await expect(heading(page)).toHaveText("library-sheets.xlsx: 30 rows under 3 columns");
    await page.getByRole("group", { name: "Which sheet holds the rows?" }).getByLabel("Jobs, 32 rows").check();
    await page.getByRole("button", { name: "Match columns" }).click();
    await page.waitForURL(/\/columns$/, patient);
    await expect(page.getByLabel("Closed goes to")).toHaveValue("completed_on");
    await expect(page.getByRole("main")).toContainText("Which column is maker?");
    await page.getByLabel("Maker (every row needs it)").fill("Brackenhall");
    await page.getByRole("button", { name: "Check rows" }).click();
    expect(await rowSum(page), "models that nobody knows, of no stated product type").toEqual([0, 0, 0, 30, 0, 30]);
    await expect(page.getByRole("table", { name: "Rows with problems" })).toContainText("product_type");
  });

  test("618 repair records of real events go through; each row has one fate, and the fates add up", async () => {
    await chooseFile(page, repairs);
    await expect(heading(page)).toContainText(`${repairRecords} rows under 10 columns`);
    await page.getByRole("button", { name: "Match columns" }).click();
    await page.waitForURL(/\/columns$/, patient);
    await expect(page.getByLabel("event_date goes to")).toHaveValue("completed_on");
    await answerWords(page, /^words-product_type$/, "other_equipment");
    await answerWords(page, /^words-status$/, "");
    await page.getByRole("button", { name: "Check rows" }).click();
    const fates = await rowSum(page);
    expect(fates.at(-1)).toBe(repairRecords);
    expect(fates.slice(0, -1).reduce((sum, rows) => sum + rows, 0)).toBe(repairRecords);
    expect(fates[0]).toBeGreaterThan(500);
    const load = await addRows(page);
    expect(await rowSum(page), "the load keeps what the check has said").toEqual(fates);
    await takeBackLoad(page, load);
  });
});

/** What a person says of every word that is still open in one column. */
async function answerWords(page: Page, section: RegExp, meaning: string) {
  for (const list of await page.locator("section[id^=words-]").all()) {
    if (!section.test((await list.getAttribute("id")) ?? "")) continue;
    for (const word of await list.getByRole("table").getByRole("combobox").all())
      if ((await word.inputValue()) === "?") await word.selectOption(meaning);
  }
}

function heading(page: Page) {
  return page.getByRole("heading", { level: 1 });
}

function kept(name: string): string {
  return fileURLToPath(new URL(`../tests/reference/${name}`, import.meta.url));
}
