// What fails, how often: the page, its table, its file and the command must say the same, and each count must lead to its jobs.
import { readFile } from "node:fs/promises";
import { expect, type Page, test } from "@playwright/test";
import { parse } from "csv-parse/sync";
import { runRates } from "./run-rates";

type CsvRow = Readonly<Record<string, string>>;

test.describe("finding what fails", () => {
  let page: Page;
  test.beforeAll(async ({ browser }) => {
    page = await browser.newPage();
  });
  test.afterAll(async () => {
    await page.close();
  });

  for (const by of ["component", "model", "component,age"]) {
    test(`by ${by}: chart's table, file and command agree, and counts lead to their jobs`, async () => {
      await page.goto(`/repeats?by=${by}`);
      await expect(page.getByRole("main").getByRole("heading", { level: 2 }).first()).toHaveText("What was asked");
      const csv = await downloadCsv(page);
      await tableEquals(page, csv);
      await commandEquals(by, csv);
      await countsLeadToJobs(page, 3);
    });
  }

  test("filters stay in the address and narrow the counts", async () => {
    await page.goto("/repeats?by=model&type=front_load_washer&component=drain_pump&level=90");
    const narrow = await downloadCsv(page);
    expect(narrow.length).toBeGreaterThan(0);
    expect(new Set(narrow.map((row) => row.level))).toEqual(new Set(["0.9"]));
    const address = new URL(
      (await ratesFigure(page).getByRole("link", { name: "CSV", exact: true }).getAttribute("href")) ?? "",
      page.url(),
    );
    expect(Object.fromEntries(address.searchParams)).toEqual({
      by: "model",
      type: "front_load_washer",
      component: "drain_pump",
      level: "90",
    });

    await page.goto("/repeats");
    await openFilters(page);
    await page.getByLabel("Group by", { exact: true }).selectOption("model");
    await page.getByLabel("Appliance", { exact: true }).selectOption("front_load_washer");
    await page.getByLabel("Component", { exact: true }).selectOption("drain_pump");
    await page.getByLabel("Ranges hold", { exact: true }).selectOption("90");
    await page.getByRole("button", { name: /show|apply|filter/i }).click();
    await page.waitForURL(/by=model/);
    expect(await downloadCsv(page)).toEqual(narrow);
    await page.reload();
    await openFilters(page);
    await expect(page.getByLabel("Component", { exact: true })).toHaveValue("drain_pump");
  });

  test("a nonsense filter is left out with a sentence, never an error", async () => {
    await page.goto("/repeats?by=component");
    const plain = await downloadCsv(page);
    const answer = await page.goto("/repeats?by=component,moon&component=flux&from=2025-02-31&level=96&colour=red");
    expect(answer?.status()).toBe(200);
    const main = page.getByRole("main");
    await expect(main).toContainText(
      "“moon” is not something to group by; it was left out. Choose from component, model",
    );
    await expect(main).toContainText("“flux” is not a component that we know; it was left out.");
    await expect(main).toContainText("“2025-02-31” is not a day; “from” was left out. Write it as 2025-03-31.");
    await expect(main).toContainText("“96” is not a level that we know; it was left out. Choose 90, 95 or 99.");
    await expect(main).toContainText("“colour” is not one of our filters; it was left out.");
    expect(await downloadCsv(page)).toEqual(plain);
  });

  test("a component's own page draws when it fails, with the numbers beside it", async () => {
    const failures = (await runRates("component")).rates.find(
      ({ group }) => group.component === "drain_pump",
    )?.failures;
    await page.goto("/repeats/drain_pump");
    const title = page.getByRole("heading", { level: 1 });
    await expect(title).toContainText(/^Drain pump: .*failed within \d years?/);
    expect(failures).toBeGreaterThan(0);
    await expect(page.getByRole("figure").first()).toContainText("Share of drain pumps failed by age of the part");
    await page.getByText("Table", { exact: true }).first().click();
    const rows = page.getByRole("table", { name: "At whole years of age" }).locator("tbody tr");
    const failed = await rows.evaluateAll((all) => all.map((row) => Number(row.children[3]?.textContent)));
    expect(failed.length).toBeGreaterThan(1);
    expect(failed, "failures by age never fall").toEqual([...failed].sort((a, b) => a - b));
    expect(failed.at(-1)).toBeGreaterThan(0);
    expect((await page.goto("/repeats/flux_gland"))?.status()).toBe(404);
  });
});

/** The drawing of the rates: what is worth a look stands on the same page with a file of its own. */
function ratesFigure(page: Page) {
  return page.getByRole("figure").filter({ has: page.locator('a[href^="/repeats/rates.csv"]') });
}

async function downloadCsv(page: Page): Promise<CsvRow[]> {
  const waiting = page.waitForEvent("download");
  await ratesFigure(page).getByRole("link", { name: "CSV", exact: true }).click();
  const text = await readFile(await (await waiting).path(), "utf8");
  return parse(text, { columns: true, bom: true });
}

/** The table that takes the drawing's place holds the file's first rows: all that are not too small to judge. */
async function tableEquals(page: Page, csv: readonly CsvRow[]) {
  const twin = page.getByRole("table", { name: /^Rates by / });
  await expect(twin).toBeHidden();
  await ratesFigure(page).getByText("Table", { exact: true }).click();
  await expect(twin).toBeVisible();
  const heads = await twin.locator("thead th").allTextContents();
  const first = heads.findIndex((head) => head === "Failures" || head === "Jobs");
  const hasRatio = heads.includes("Times what its ages predict");
  const shown = await twin
    .locator("tbody tr")
    .evaluateAll(
      (rows, at) => rows.map((row) => [...row.children].slice(at, -1).map((cell) => cell.textContent)),
      first,
    );
  const judged = csv.filter(({ grade }) => grade !== "thin" && grade !== "no exposure");
  expect(judged.length).toBeGreaterThan(3);
  expect(shown).toEqual(
    judged.map((row) => [
      fixed(row.events, 0),
      fixed(row.unit_years, 1),
      fixed(row.rate_per_100_unit_years, 2),
      fixed(row.low, 2),
      fixed(row.high, 2),
      ...(hasRatio ? [ratioOf(row)] : []),
    ]),
  );
}

function ratioOf({ times_predicted: times, times_low: low, times_high: high }: CsvRow): string {
  return times === "" ? "–" : `${fixed(times, 1)} (${fixed(low, 1)} to ${fixed(high, 1)})`;
}

/** Every digit: both print what the computation gave. */
async function commandEquals(by: string, csv: readonly CsvRow[]) {
  const { rates, all } = await runRates(by);
  const dimensions = by.split(",");
  const key = (values: Readonly<Record<string, string>>) => dimensions.map((name) => values[name]).join(" · ");
  const numbers = new Map(rates.map((rate) => [key(rate.group), rate]));
  expect(csv.length).toBe(rates.length);
  for (const row of csv) {
    const rate = numbers.get(key(row));
    const printed = [rate?.failures, rate?.unitYears, rate?.ratePer100, rate?.low, rate?.high];
    const inFile = [row.events, row.unit_years, row.rate_per_100_unit_years, row.low, row.high];
    expect(inFile.map(numberOrNull), key(row)).toEqual(printed);
  }
  expect(csv.reduce((sum, row) => sum + Number(row.events), 0)).toBeLessThanOrEqual(all.failures);
}

async function countsLeadToJobs(page: Page, groups: number) {
  const rows = page.getByRole("table", { name: /^Rates by / }).locator("tbody tr");
  const links = await rows
    .locator('a[href^="/jobs?"]')
    .evaluateAll((all) => all.map((link) => [link.getAttribute("href") ?? "", link.textContent ?? ""] as const));
  expect(links.length).toBeGreaterThanOrEqual(groups);
  for (const [href, count] of links.slice(0, groups)) {
    await page.goto(href);
    const jobs = count === "1" ? "1 job" : `${count} jobs`;
    await expect(page.getByRole("heading", { level: 1 }), href).toHaveText(`${jobs} in this view`);
  }
}

async function openFilters(page: Page) {
  const groupBy = page.getByLabel("Group by", { exact: true });
  if (await groupBy.isHidden()) await page.locator("main details", { has: groupBy }).locator("summary").first().click();
}

function fixed(text: string | undefined, decimals: number): string {
  return new Intl.NumberFormat("en-US", { minimumFractionDigits: decimals, maximumFractionDigits: decimals }).format(
    Number(text),
  );
}

function numberOrNull(text: string | undefined): number | null {
  return text === undefined || text === "" ? null : Number(text);
}
