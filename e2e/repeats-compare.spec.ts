// When a part fails, and whether one group fails more often than another: what is drawn, its table and its file agree, each
// choice stands in the address, and a question without an answer gets a sentence.
import { expect, type Page, test } from "@playwright/test";
import { parse } from "csv-parse/sync";
import { isReadableAtEveryWidth } from "./readable";
import { runRates } from "./run-rates";

type CsvRow = Readonly<Record<string, string>>;

const verdicts =
  /clearly above|probably above|no sign of a difference|probably below|clearly below|too few failures to judge/;

async function fileOf(page: Page, address: string): Promise<CsvRow[]> {
  const answer = await page.request.get(address);
  expect(answer.status(), address).toBe(200);
  return parse(await answer.text(), { columns: true, bom: true, relax_column_count: true });
}

/** The file that stands beside a drawing, by the drawing's sentence. */
async function fileBeside(page: Page, takeaway: string | RegExp): Promise<CsvRow[]> {
  const figure = page.getByRole("figure").filter({ hasText: takeaway }).first();
  const href = await figure.getByRole("link", { name: "CSV", exact: true }).getAttribute("href");
  return fileOf(page, href ?? "no file");
}

function sum(rows: readonly CsvRow[], column: string): number {
  return rows.reduce((total, row) => total + Number(row[column]), 0);
}

/** The model of a component with the most failures, and its maker's name for the form. */
async function busiestModel(page: Page, component: string): Promise<{ model: string; events: number }> {
  const rows = await fileOf(page, `/repeats/rates.csv?by=model&component=${component}`);
  const [first] = [...rows].sort((a, b) => Number(b.events) - Number(a.events));
  if (first?.model === undefined) throw new Error(`no model has a ${component}`);
  return { model: first.model, events: Number(first.events) };
}

test.describe("when a part fails", () => {
  test("age bands, curve, repeats and rows all hold the failures that the command counts", async ({ page }) => {
    const rate = (await runRates("component")).rates.find(({ group }) => group.component === "drain_pump");
    await page.goto("/repeats/drain_pump");
    const bands = await fileBeside(page, "Failures a year by age of the part");
    expect(sum(bands, "failed")).toBe(rate?.failures);
    // A part's life begins half a day before the first watched day, so that a failure on that day is seen.
    expect(Math.abs(sum(bands, "years_lived") / (rate?.unitYears ?? 0) - 1)).toBeLessThan(0.001);
    expect(sum(await fileBeside(page, "Share of drain pumps failed"), "failed")).toBe(rate?.failures);
    expect(sum(await fileBeside(page, "repeats included"), "failures")).toBe(rate?.failures);
    expect(sum(await fileBeside(page, "Rates by model"), "events")).toBe(rate?.failures);
  });

  test("the life table shows what its file holds", async ({ page }) => {
    await page.goto("/repeats/drain_pump");
    const figure = page.getByRole("figure").filter({ hasText: "Failures a year by age of the part" });
    await figure.getByText("Table", { exact: true }).click();
    const shown = await figure
      .locator("tbody tr")
      .evaluateAll((rows) => rows.map((row) => [3, 6, 7, 8].map((at) => row.children[at]?.textContent ?? "")));
    const two = (value: string | undefined) => Number(value).toFixed(2);
    const file = await fileBeside(page, "Failures a year by age of the part");
    expect(shown).toEqual(
      file.map((row) => [row.failed, two(row.failures_per_100_years), two(row.low), two(row.high)]),
    );
  });

  test("the fitted life gives its ranges, says what it may not say, and refuses too few failures", async ({ page }) => {
    await page.goto("/repeats/drain_pump");
    const life = await fileOf(page, "/repeats/drain_pump/fitted-life.csv");
    const shape = life.find(({ quantity }) => quantity === "weibull_shape");
    expect(Number(shape?.low)).toBeLessThan(Number(shape?.value));
    const main = page.getByRole("main");
    const words = Number(shape?.low) > 1 ? /above 1/ : Number(shape?.high) < 1 ? /below 1/ : /holds 1/;
    await expect(main).toContainText(words);
    await expect(main.getByRole("table", { name: "Chance that a part has failed by an age" })).toBeVisible();

    // The first days of the records hold under five failures.
    const early = await fileOf(page, "/repeats/drain_pump/fitted-life.csv?to=2020-11-12");
    expect(early).toHaveLength(1);
    expect(early[0]?.quantity).toMatch(/^not fitted/);
  });

  test("rows by another grouping stay in the address", async ({ page }) => {
    await page.goto("/repeats/drain_pump");
    await page.getByRole("link", { name: "By symptom" }).click();
    await page.waitForURL(/rows=symptom/);
    await expect(page.getByRole("figure").filter({ hasText: "Rates by symptom" })).toBeVisible();
    const { model } = await busiestModel(page, "drain_pump");
    await page.goto(`/repeats/drain_pump?model=${model}&rows=maker`);
    await expect(page.getByRole("main")).toContainText("Only one maker in this view");
  });
});

test.describe("two groups", () => {
  test("from the part's page to a comparison by its form, and its numbers to the file", async ({ page }) => {
    const { model, events } = await busiestModel(page, "drain_pump");
    await page.goto(`/repeats/drain_pump?model=${model}`);
    await page.getByRole("button", { name: "Compare these two" }).click();
    await page.waitForURL(/\/compare\?/);
    expect(Object.fromEntries(new URL(page.url()).searchParams)).toEqual({ model, with: "rest" });
    await expect(page.getByRole("heading", { level: 1 })).toContainText(verdicts);
    const rates = await fileBeside(page, "How many times as often");
    const [own] = rates.filter(({ quantity }) => quantity === "failures per 100 unit-years");
    expect(Number(own?.events)).toBe(events);
    const ratios = rates.filter(({ quantity }) => quantity === "ratio");
    expect(ratios.map(({ of }) => of)).toEqual(["At like ages", "Seen over expected", "All ages in one"]);
    for (const { low, value, high } of ratios) {
      expect(Number(low)).toBeLessThan(Number(value));
      expect(Number(value)).toBeLessThan(Number(high));
    }
    const curves = await fileBeside(page, "Share failed by age of the part");
    expect(new Set(curves.map(({ group }) => group)).size).toBe(2);
    const address = page.url();
    const title = await page.getByRole("heading", { level: 1 }).textContent();
    await page.reload();
    expect(page.url()).toBe(address);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(title ?? "");
  });

  test("turned round, the ratio turns over", async ({ page }) => {
    const rows = await fileOf(page, "/repeats/rates.csv?by=maker&component=drain_pump");
    const [one, other] = rows.filter(({ events }) => Number(events) > 2).map(({ maker }) => maker ?? "");
    if (one === undefined || other === undefined) throw new Error("under two makers have failures of drain pumps");
    const ratio = async (first: string, second: string) => {
      const search = new URLSearchParams({ make: first, with: `make:${second}` });
      const rates = await fileOf(page, `/repeats/drain_pump/compare/rates.csv?${search}`);
      const found = rates.find(({ of }) => of === "At like ages");
      return [found?.value, found?.low, found?.high].map(Number);
    };
    const [value = 0, low = 0, high = 0] = await ratio(one, other);
    const [turned = 0, turnedLow = 0, turnedHigh = 0] = await ratio(other, one);
    expect(turned).toBeCloseTo(1 / value, 6);
    expect(turnedLow).toBeCloseTo(1 / high, 6);
    expect(turnedHigh).toBeCloseTo(1 / low, 6);
  });

  test("another component of the same units", async ({ page }) => {
    await page.goto("/repeats/drain_pump/compare?with=component:door_lock&type=front_load_washer");
    await expect(page.getByRole("heading", { level: 1 })).toContainText(verdicts);
    await expect(page.getByRole("heading", { level: 1 })).toContainText("Door lock, front-load washer");
  });

  test("what is no second group gets a sentence", async ({ page }) => {
    const title = page.getByRole("heading", { level: 1 });
    await page.goto("/repeats/drain_pump/compare");
    await expect(title).toContainText("The first group is the whole fleet, so there is no rest");
    const { model } = await busiestModel(page, "drain_pump");
    await page.goto(`/repeats/drain_pump/compare?model=${model}&with=model:${model}`);
    await expect(title).toContainText("One group is part of the other");
    await page.goto(`/repeats/drain_pump/compare?model=${model}&with=moon`);
    await expect(page.getByRole("main")).toContainText("“moon” is nothing to compare with; the rest was taken.");
    expect((await page.goto("/repeats/flux_gland/compare"))?.status()).toBe(404);
    expect((await page.request.get("/repeats/drain_pump/no-such.csv")).status()).toBe(404);
  });
});

test.describe("before and after a day", () => {
  test("the two sides hold all failures between them", async ({ page }) => {
    const all = (await runRates("component")).rates.find(({ group }) => group.component === "drain_pump");
    await page.goto("/repeats/drain_pump");
    await page.getByLabel(/^Before and after a day/).fill("2025-01-01");
    await page.getByRole("button", { name: "Compare before with after" }).click();
    await page.waitForURL(/before-after\?on=2025-01-01/);
    const rates = await fileBeside(page, "How many times as often");
    const sides = rates.filter(({ quantity }) => quantity === "failures per 100 unit-years");
    expect(sum(sides, "events")).toBe(all?.failures);
    expect(sum(sides, "unit_years_or_expected")).toBeCloseTo(all?.unitYears ?? 0, 3);
    await expect(page.getByRole("complementary", { name: "What this is based on" })).toContainText(
      "Mostly the same units stand on both sides, and they are older",
    );
  });

  test("a day outside the view, or none, gets a sentence", async ({ page }) => {
    const title = page.getByRole("heading", { level: 1 });
    await page.goto("/repeats/drain_pump/before-after");
    await expect(title).toContainText("Before and after which day?");
    await page.goto("/repeats/drain_pump/before-after?on=2031-01-01");
    await expect(title).toContainText("1 Jan 2031 does not part the days of this view");
  });
});

test("a period without an answer says what is missing", async ({ page }) => {
  const title = page.getByRole("heading", { level: 1 });
  await page.goto("/repeats/drain_pump?to=1999-12-31");
  await expect(title).toHaveText("Drain pump: nothing was watched up to 31 Dec 1999");
  await expect(page.getByRole("main")).toContainText("The first of these units came under watch on");
  await page.goto("/repeats/drain_pump?type=refrigerator");
  await expect(title).toHaveText("Drain pump: no unit of this view has one");
});

test("readable by everybody", async ({ page }) => {
  test.setTimeout(120_000);
  const { model } = await busiestModel(page, "drain_pump");
  for (const route of [
    `/repeats/drain_pump?model=${model}`,
    `/repeats/drain_pump/compare?model=${model}`,
    `/repeats/drain_pump/before-after?model=${model}&on=2025-01-01`,
    "/repeats/drain_pump/compare",
  ]) {
    await page.goto(route);
    await isReadableAtEveryWidth(page);
  }
});
