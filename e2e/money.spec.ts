// The money half of the desk: covered work to drafts, a payer's list to its claims, what was cut to its appeal, and the
// failed parts to their tags.
import { expect, type Page, test } from "@playwright/test";
import { isFree } from "./free-jobs";
import { isReadable } from "./readable";

const main = (page: Page) => page.getByRole("main");
const title = (page: Page) => page.getByRole("heading", { level: 1 });

test("covered work of the whole history becomes drafts, and is on the list no more", async ({ page }) => {
  await page.goto("/claims/unclaimed");
  await expect(title(page)).toContainText("can still be asked for");
  await page.getByRole("link", { name: "Covered, never filed" }).click();
  const row = page
    .getByRole("rowheader")
    .filter({ has: page.getByRole("checkbox") })
    .filter({ hasText: isFree })
    .first();
  const job = (await row.getByRole("link").textContent()) ?? "";
  await row.getByRole("checkbox").check();
  await page.getByRole("button", { name: "Make drafts of the chosen" }).click();
  await expect(page.getByRole("status").filter({ hasText: "1 of 1 went" })).toBeVisible();
  await page.goto("/claims/unclaimed");
  await expect(page.getByRole("rowheader").filter({ hasText: new RegExp(`^${job}$`) })).toHaveCount(0);
  await isReadable(page);
});

test("a payer’s list: read, named, posted, and what was cut leads to its appeal", async ({ page }) => {
  test.setTimeout(240_000);
  const [payer, full, cut] = await twoOnTheirWay(page);
  const text = [
    "Your claim,Amount paid,Remark",
    `${full.claim},${full.asked},`,
    `${cut.claim},${(Number(cut.asked) - 10).toFixed(2)},ALLOWANCE EXCEEDED`,
    "NOT-OURS-1,44.10,",
    `${cut.claim},see letter,`,
    "",
  ].join("\r\n");
  await upload(page, payer, text);
  await expect(title(page)).toContainText("Say what the columns of this list");
  await page.getByRole("button", { name: "Read the lines" }).click();
  await expect(title(page)).toContainText("2 lines of this list need somebody");
  await expect(main(page)).toContainText("Row 5: Amount paid “see letter”");
  await page.getByLabel("“ALLOWANCE EXCEEDED” means").selectOption({ label: "Amount above the payer's schedule" });
  await page.getByRole("button", { name: "Remember" }).click();
  await expect(page.getByText("Remembered for this payer")).toBeVisible();
  await expect(main(page)).toContainText("version 1");
  await page.getByRole("button", { name: "Post 2 lines" }).click();
  await expect(page.getByRole("table", { name: "Posted (2)" })).toBeVisible();
  await isReadable(page);

  await upload(page, payer, text);
  await expect(main(page)).toContainText("You sent this file before");

  await page.goto(`/claims/${full.claim}`);
  await expect(title(page)).toContainText(/, paid$/);
  await page.goto("/claims/disputes");
  const line = page.getByRole("row").filter({ hasText: cut.claim }).filter({ hasText: "ALLOWANCE EXCEEDED" }).first();
  await expect(line).toContainText("Amount above the payer's schedule");
  await isReadable(page);
  await line.getByRole("link", { name: "Appeal" }).click();
  await expect(title(page)).toContainText(`Appeal: claim ${cut.claim}`);
});

test("payers are compared by what they pay and how old their money is; lists are found by a claim in them", async ({
  page,
}) => {
  await page.goto("/claims/payers");
  await expect(page.getByRole("heading", { name: "Pay against retail" })).toBeVisible();
  await expect(page.getByRole("table", { name: /^How old the money is/ }).first()).toBeVisible();
  await isReadable(page);
  await page.goto("/claims/answers?words=no+such+claim");
  await expect(main(page)).toContainText("No list fits this filter");
  await page.goto("/claims/answers");
  await expect(page.getByRole("table", { name: /^Payers’ lists/ })).toBeVisible();
  await isReadable(page);
});

test("failed parts are listed with their last day, and print as tags", async ({ page }) => {
  await page.goto("/claims/failed-parts");
  await expect(title(page)).toContainText("must be kept");
  await isReadable(page);
  await page.getByRole("link", { name: "Tags to print" }).click();
  const tags = main(page).getByRole("listitem");
  await expect(tags.first()).toBeVisible();
  await isReadable(page);
  await page.emulateMedia({ media: "print" });
  const box = await tags.first().boundingBox();
  expect(Math.round(((box?.height ?? 0) * 25.4) / 96)).toBe(50);
  await page.emulateMedia({ media: null });

  await page.goto("/claims/failed-parts");
  const first = page
    .getByRole("table", { name: /^To keep/ })
    .getByRole("rowheader")
    .first();
  const claim = ((await first.getByRole("link").textContent()) ?? "").trim();
  await first.getByRole("checkbox").check();
  await page.getByLabel("What became of it").selectOption({ label: "Scrapped" });
  await page.getByLabel("Tag or parcel").fill("T-12");
  await page.getByRole("button", { name: "Enter it for the chosen" }).click();
  await expect(main(page)).toContainText("Say why it was scrapped all the same");
  await page.getByLabel("What became of it").selectOption({ label: "Sent back to the payer" });
  await page.getByRole("button", { name: "Enter it for the chosen" }).click();
  await expect(page.getByRole("status").filter({ hasText: "1 of 1 went" })).toBeVisible();
  const gone = page.getByRole("table", { name: /^Gone/ }).getByRole("row").filter({ hasText: claim });
  await expect(gone.first()).toContainText("tag T-12, entered by Oriel");
  await isReadable(page);
});

interface OnItsWay {
  readonly claim: string;
  readonly asked: string;
}

/** Two claims of one payer that wait for their answer, with what they ask. */
async function twoOnTheirWay(page: Page): Promise<readonly [string, OnItsWay, OnItsWay]> {
  await page.goto("/claims?list=sent");
  const byPayer = new Map<string, OnItsWay[]>();
  for (const row of await page
    .getByRole("row")
    .filter({ has: page.getByRole("rowheader") })
    .all()) {
    const [payer, , state, , , asked] = await row.getByRole("cell").allTextContents();
    if (payer === undefined || (state !== "sent" && state !== "received")) continue;
    const claim = ((await row.getByRole("rowheader").textContent()) ?? "").trim();
    byPayer.set(payer, [...(byPayer.get(payer) ?? []), { claim, asked: (asked ?? "").replace(/[^\d.]/g, "") }]);
  }
  const [payer, [full, cut] = []] = [...byPayer].find(([, claims]) => claims.length > 1) ?? [];
  if (payer === undefined || full === undefined || cut === undefined) throw new Error("no payer with two claims");
  return [payer, full, cut];
}

async function upload(page: Page, payer: string, text: string): Promise<void> {
  await page.goto("/claims/answers");
  const form = page.locator("form").filter({ hasText: "Number of the payment" });
  await form.getByLabel("Payer").selectOption({ label: payer });
  await form.getByLabel("Number of the payment").fill("CR-E2E");
  await form
    .getByLabel("The list")
    .setInputFiles({ name: "credits.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
  await form.getByRole("button", { name: "Read the list" }).click();
  await page.waitForURL(/\/claims\/answers\/\d+/);
}
