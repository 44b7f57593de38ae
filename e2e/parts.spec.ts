// Parts: what is suggested comes onto the order list, what comes in lies in the ledger and on hand, wrong entries get a
// sentence and change nothing, and every page's figures are those of its file.
import { expect, type Page, test } from "@playwright/test";
import { parse } from "csv-parse/sync";
import { isReadable } from "./readable";

type CsvRow = Readonly<Record<string, string>>;

async function fileOf(page: Page, address: string): Promise<CsvRow[]> {
  const answer = await page.request.get(address);
  expect(answer.status(), address).toBe(200);
  return parse(await answer.text(), { columns: true, bom: true });
}

/** The part with these words in its row of the file. */
async function partWith(
  page: Page,
  fits: (row: CsvRow) => boolean,
): Promise<CsvRow & { readonly part_number: string }> {
  const row = (await fileOf(page, "/parts/parts.csv")).find(fits);
  if (row?.part_number === undefined) throw new Error("no part of the invented company fits");
  return { ...row, part_number: row.part_number };
}

const pathOf = (partNumber: string) => `/parts/${partNumber.replaceAll(/[^A-Za-z0-9]/g, "")}`;

test("what has to be ordered goes onto the list, is ordered, comes in two deliveries and is then on hand", async ({
  page,
}) => {
  const short = await partWith(
    page,
    (row) => Number(row.order_now) >= 2 && Number(row.on_order) === 0 && Number(row.on_hand) >= 0,
  );
  const pieces = Number(short.order_now);
  await page.goto(`/parts?show=order&q=${short.part_number}`);
  await page.getByRole("link", { name: "Add to the order list" }).first().click();
  await expect(page.getByLabel("Pieces")).toHaveValue(String(pieces));
  await page.getByRole("button", { name: "Add to the order list" }).click();
  await expect(page.getByText("On the order list as a draft")).toBeVisible();
  const line = page.getByRole("row").filter({ hasText: short.part_number });
  await line.getByRole("link", { name: "Order or change" }).click();
  await page.getByRole("button", { name: "Mark as ordered" }).click();
  await expect(page.getByText("Marked as ordered")).toBeVisible();
  await line.getByRole("link", { name: "Receive or change" }).click();
  await page.getByLabel("Pieces that came").fill(String(pieces + 1));
  await page.getByRole("button", { name: "Receive" }).click();
  await expect(page.getByRole("region", { name: "One thing to put right" })).toBeFocused();
  await expect(page.getByText(`${pieces} are still to come.`)).toBeVisible();
  await page.getByLabel("Pieces that came").fill("1");
  await page.getByRole("button", { name: "Receive" }).click();
  await expect(page.getByText("Received, and entered in the ledger")).toBeVisible();
  const after = await partWith(page, (row) => row.part_number === short.part_number);
  expect(Number(after.on_hand)).toBe(Number(short.on_hand) + 1);
  expect(Number(after.on_order)).toBe(pieces - 1);
  expect(Number(after.order_now)).toBe(0);
  await page.goto(pathOf(short.part_number));
  await page.getByText(/^Ledger:/).click();
  await expect(page.getByRole("row").filter({ hasText: "Received" }).first()).toContainText("+1");
});

test("wrong entries of stock and terms get a sentence and change nothing; right ones are entered once", async ({
  page,
}) => {
  const part = await partWith(page, (row) => Number(row.on_hand) > 0);
  await page.goto(`${pathOf(part.part_number)}/stock`);
  await page.getByLabel("What happened").selectOption("scrap");
  await page.getByLabel("Pieces").fill("9999");
  await page.getByRole("button", { name: "Enter it" }).click();
  await expect(page.getByText(/The ledger has \d+ on the shelf, so 9999 cannot be scrapped/)).toBeVisible();
  await page.getByLabel("Pieces").fill("-3");
  await page.getByRole("button", { name: "Enter it" }).click();
  await expect(page.getByText("Pieces: “-3” is no whole number; write it as 4.")).toBeVisible();
  await page.getByLabel("What happened").selectOption("count");
  await page.getByLabel("Pieces").fill("17");
  await page.getByRole("button", { name: "Enter it" }).click();
  await expect(page.getByText("Entered in the ledger")).toBeVisible();
  await expect(page.getByRole("row").filter({ hasText: "Shelf" }).first()).toContainText("17");

  await page.goto(`${pathOf(part.part_number)}/terms`);
  await page.getByLabel("Lead time in days").fill("0");
  await page.getByLabel("Superseded by").fill("");
  await page.getByRole("button", { name: "Keep these" }).click();
  await expect(page.getByText("0 days would mean that it is there before it is ordered")).toBeVisible();
  await page.getByLabel("Lead time in days").fill("4, 6, 9");
  await page.getByLabel("Superseded by").fill(part.part_number);
  await page.getByRole("button", { name: "Keep these" }).click();
  await expect(page.getByText(`${part.part_number} cannot supersede itself`)).toBeVisible();
  await page.getByLabel("Superseded by").fill("");
  await page.getByLabel("Risk: short in no more than").selectOption("20");
  await page.getByRole("button", { name: "Keep these" }).click();
  await expect(page.getByText("Kept; reorder point and quantity follow it")).toBeVisible();
  await expect(page.getByText("Wanted: short in no more than 1 of 20 waits.")).toBeVisible();
});

test("a part's months add up to its file; a superseded number leads to its successor; twenty futures follow the stock", async ({
  page,
}) => {
  const busy = await partWith(
    page,
    (row) => Number(row.used_12_months) >= 4 && Number(row.used_12_months) < 12 && /-B$/.test(row.part_number ?? ""),
  );
  await page.goto(pathOf(busy.part_number.replace(/B$/, "A")));
  await expect(page.getByRole("heading", { level: 1 })).toContainText(`was superseded by ${busy.part_number}`);
  await page.getByRole("link", { name: busy.part_number, exact: true }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(/most likely .* 9 times in 10/);
  const months = await fileOf(page, `${pathOf(busy.part_number)}/months.csv`);
  const used = months.filter((row) => row.used !== "").slice(-12);
  expect(used.reduce((sum, row) => sum + Number(row.used), 0)).toBe(Number(busy.used_12_months));
  // A fan of such small counts would say less than the sentence.
  await expect(
    page.getByText(/^Fewer than one a month is used \(\d+ in 12 months\), so no monthly fan is drawn/),
  ).toBeVisible();
  const sentence = page.getByText(/^Stock of \d+ is enough in \d+ of 20 futures$/);
  const before = await sentence.textContent();
  await page.getByRole("button", { name: "One more" }).click();
  await expect(sentence).not.toHaveText(before ?? "");
  await expect(page.getByText(/Of \d+ monthly ranges made from the months before alone/)).toBeVisible();
  await isReadable(page);
});

test("the fan of a part that is used every month reads point by point, and says which machines drive it", async ({
  page,
}) => {
  const busy = await partWith(
    page,
    (row) => Number(row.used_12_months) >= 12 && (row.component ?? "") !== "" && /-B$/.test(row.part_number ?? ""),
  );
  await page.goto(pathOf(busy.part_number));
  const months = await fileOf(page, `${pathOf(busy.part_number)}/months.csv`);
  const ahead = months.filter((row) => row.used === "");
  expect(ahead).toHaveLength(24);
  for (const row of ahead) {
    const [low, high] = [Number(row.low_90), Number(row.high_90)];
    expect(low).toBeLessThanOrEqual(Number(row.low_60));
    expect(high).toBeGreaterThanOrEqual(Number(row.high_60));
    expect(Number(row.mean)).toBeLessThanOrEqual(high + 1);
  }
  // The first point read is the oldest month drawn, the last one the last month expected.
  const chart = page.getByRole("application", { name: new RegExp(`^${busy.part_number} by month`) }).first();
  await chart.focus();
  await page.keyboard.press("End");
  const last = ahead.at(-1);
  await expect(
    page.getByText(new RegExp(`expected: .*between ${last?.low_90} and ${last?.high_90}`)).first(),
  ).toBeVisible();
  await page.getByText("Table", { exact: true }).first().click();
  await expect(page.getByRole("table", { name: "By month" }).getByRole("row")).toHaveCount(1 + 24 + 24);
  await expect(page.getByRole("heading", { name: "What drives it" })).toBeVisible();
  await expect(page.getByText(/run in machines of /)).toBeVisible();
  await expect(page.getByText(/and \d+ jobs? took this part/)).toBeVisible();
  await page.setViewportSize({ width: 390, height: 800 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await isReadable(page);
});

test("trucks, idle stock and money answer their questions, and say what they rest on", async ({ page }) => {
  await page.goto("/parts/trucks?budget=lots");
  await expect(page.getByText("“lots” is not an amount; 500.00 was taken.")).toBeVisible();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(/visits that need parts/);
  await expect(page.getByText(/9 years in 10 between \d+ and \d+ in 100/)).toBeVisible();
  await page.goto("/parts/idle");
  await expect(page.getByRole("heading", { level: 1 })).toContainText(/lies in \d+ parts? that|No stock lies idle/);
  await page.goto("/parts/money");
  await expect(page.getByRole("heading", { level: 1 })).toContainText(/^Parts: most likely/);
  const rows = await fileOf(page, "/parts/money/money.csv");
  const [first] = rows.filter(({ component }) => component === "all");
  const parts = rows.filter(({ component, month }) => component !== "all" && month === first?.month);
  // Means of sums are sums of means; ranges are not.
  const means = parts.reduce((sum, row) => sum + Number(row.spend_mean), 0);
  expect(Math.abs(means - Number(first?.spend_mean))).toBeLessThan(0.01 * parts.length);
  expect(parts.reduce((sum, row) => sum + Number(row.spend_high_90), 0)).toBeGreaterThan(Number(first?.spend_high_90));
});
