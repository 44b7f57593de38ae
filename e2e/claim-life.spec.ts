// A claim from the job to the money, with everything that usually comes between: checks that fail, a rejection, a
// correction, a short payment and an appeal.
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { expect, type Page, test } from "@playwright/test";
import { freeJob, isFree } from "./free-jobs";
import { isReadable } from "./readable";

const main = (page: Page) => page.getByRole("main");
const title = (page: Page) => page.getByRole("heading", { level: 1 });

test("build, check, send, be rejected, correct, be paid short, appeal, be paid", async ({ page }) => {
  test.setTimeout(240_000);
  const claim = await buildDraft(page);
  await sendWithReasons(page, claim, "Mark as sent");
  await isReadable(page);

  await open(page, "Record the answer");
  await page.getByLabel("The payer’s answer").selectOption({ label: "Rejected" });
  await page.getByLabel("The payer’s own words").fill("POP INVALID OR MISSING");
  await page.getByRole("button", { name: "Record the answer" }).click();
  await expect(main(page).getByRole("link", { name: /Choose the reason on our list/ })).toBeVisible();
  await expect(page.getByLabel("The payer’s own words")).toHaveValue("POP INVALID OR MISSING");
  await page
    .getByLabel("Our reason")
    .selectOption({ label: "Purchase date missing, wrong, or not the one on the payer's record" });
  await page.getByRole("button", { name: "Record the answer" }).click();
  await expect(title(page)).toContainText(", rejected");
  await expect(main(page)).toContainText("Correct and send again by");
  await expect(main(page)).toContainText("In the payer’s words: “POP INVALID OR MISSING”");

  await sendWithReasons(page, claim, "Correct and send again");
  await paidShort(page);
  await open(page, "Appeal");
  await page.getByLabel("What the appeal rests on").fill("The invoice names the full cost.");
  await page.getByRole("button", { name: "Appeal" }).click();
  await expect(title(page)).toContainText(", appealed");

  await open(page, "Record a payment");
  await page.getByLabel("Reference of the payment").fill("CR-2");
  await page.getByRole("button", { name: "Record a payment" }).click();
  await expect(title(page)).toContainText(/, paid$/);
  await expect(main(page).getByRole("definition").filter({ hasText: "USD 0.00" })).not.toHaveCount(0);
  await expect(page.getByRole("list").filter({ hasText: "Built as a draft" }).getByRole("listitem")).toHaveCount(7);
  await isReadable(page);
  await whatWasSentIsKept(page, claim);
});

async function buildDraft(page: Page): Promise<string> {
  await page.goto(`/claims/for/${await freeJob(page)}`);
  await page.getByRole("button", { name: "Keep as a draft claim" }).first().click();
  await page.waitForURL(/\/claims\/C-/);
  await expect(title(page)).toContainText(", a draft");
  await expect(page.getByRole("heading", { name: "Checks before filing" })).toBeVisible();
  return decodeURIComponent(new URL(page.url()).pathname.split("/").at(-1) ?? "");
}

/** The first try is stopped by the checks that fail, each with its field; the second gives a reason for each. */
async function sendWithReasons(page: Page, claim: string, act: string): Promise<void> {
  await open(page, act);
  await page.getByRole("button", { name: act }).click();
  const summary = page.getByRole("region", { name: /put right/ });
  await expect(summary).toBeFocused();
  const reasons = page.getByLabel(/: why it is sent all the same$/);
  expect(await reasons.count()).toBeGreaterThan(0);
  for (const field of await reasons.all()) await field.fill("Agreed by phone.");
  await page.getByRole("button", { name: act }).click();
  await page.waitForURL(new RegExp(`/claims/${claim}\\?done=sent`));
  await expect(title(page)).toContainText(", sent");
  await expect(main(page)).toContainText("Entered by Oriel");
}

async function paidShort(page: Page): Promise<void> {
  await open(page, "Record a payment");
  await page.getByRole("button", { name: "Record a payment" }).click();
  await expect(main(page).getByRole("link", { name: /Enter the payment’s or credit note’s reference/ })).toBeVisible();
  await page.getByLabel("Reference of the payment").fill("CR-1");
  await page.getByLabel(/^Line 1,/).fill("1.00");
  await page.getByRole("button", { name: "Record a payment" }).click();
  await expect(title(page)).toContainText(", short-paid");
}

async function open(page: Page, act: string): Promise<void> {
  await page.getByRole("navigation", { name: "What can follow" }).getByRole("link", { name: act, exact: true }).click();
  await expect(title(page)).toContainText(`${act}: claim`);
}

/** The bytes that come out have the fingerprint that the page prints, and the packet is drawn from them. */
async function whatWasSentIsKept(page: Page, claim: string): Promise<void> {
  await page.getByRole("link", { name: "What was sent", exact: true }).click();
  await page.waitForURL(new RegExp(`/claims/${claim}/sent/1`));
  const printed = ((await main(page).textContent()) ?? "").match(/[0-9a-f]{64}/)?.[0];
  const waiting = page.waitForEvent("download");
  await page.getByRole("link", { name: "The bytes that it was made of" }).click();
  const bytes = await readFile(await (await waiting).path());
  expect(createHash("sha256").update(bytes).digest("hex")).toBe(printed);
  expect(JSON.parse(bytes.toString("utf8"))).toMatchObject({ claimNumber: claim, filing: 1 });
}

test("a form that was opened before somebody else wrote is refused once, and shows both versions", async ({
  browser,
}) => {
  const [one, other] = [await browser.newPage(), await browser.newPage()];
  const claim = await buildDraft(one);
  const path = `/claims/${encodeURIComponent(claim)}/do/withdrawn`;
  await one.goto(path);
  await other.goto(path.replace("withdrawn", "sent"));
  for (const field of await other.getByLabel(/: why it is sent all the same$/).all()) await field.fill("Agreed.");
  await one.getByLabel("Why it is withdrawn").fill("The customer paid.");
  await one.getByRole("button", { name: "Withdraw the draft" }).click();
  await expect(title(one)).toContainText(", withdrawn");
  await other.getByRole("button", { name: "Mark as sent" }).click();
  await expect(
    other.getByRole("alert").filter({ hasText: "You opened version 1. Version 2 is there now" }),
  ).toBeVisible();
  await one.close();
  await other.close();
});

test("of many drafts at once, each is judged by itself, and what did not go says why", async ({ page }) => {
  await page.goto("/claims");
  const boxes = page.getByRole("checkbox");
  const free = page.getByRole("rowheader").filter({ hasText: isFree });
  for (const index of [0, 1]) await free.nth(index).getByRole("checkbox").check();
  expect(await boxes.count()).toBeGreaterThan(2);
  await page.getByRole("button", { name: "Make drafts of the chosen" }).click();
  await expect(page.getByRole("status").filter({ hasText: "2 of 2 went" })).toBeVisible();
  await page.goto("/claims?list=drafts");
  await page.getByRole("button", { name: "Choose all" }).click();
  await page.getByRole("button", { name: "Mark the chosen as sent" }).click();
  await expect(page.getByRole("status").filter({ hasText: "did not, each for its reason" })).toBeVisible();
  await isReadable(page);
});
