// The terms of a maker: read in sentences, changed as a new version, what it would alter seen before it is published.
import { expect as expectSoon, type Page, test } from "@playwright/test";
import { isFree } from "./free-jobs";
import { isReadableAtEveryWidth } from "./readable";

/** A page may be made at its first call, which a busy machine does slowly. */
const expect = expectSoon.configure({ timeout: 60_000 });

test.describe.configure({ timeout: 240_000, mode: "serial" });
test.use({ actionTimeout: 20_000 });

let page: Page;
test.beforeAll(async ({ browser }) => {
  page = await (await browser.newContext()).newPage();
});
test.afterAll(async () => {
  await page.context().close();
});

const heading = () => page.getByRole("heading", { level: 1 });

test("policies stand by payer, each version with the sales that it governs", async () => {
  await page.goto("/shop/coverage");
  const makers = page.getByRole("table", { name: "Brackenhall" });
  await expect(makers).toContainText("1 Jan 2000 to 31 Dec 2022");
  await expect(makers).toContainText("1 Jan 2023 on");
  await isReadableAtEveryWidth(page);
});

test("a version is told in sentences and a table of terms", async () => {
  await page.getByRole("link", { name: "Brackenhall household warranty, version 2" }).click();
  await expect(page.getByRole("table", { name: "How long each pay item is covered" })).toContainText(
    "Motors and pumps",
  );
  await expect(page.getByText("A claim must be sent within 30 days of completion.")).toBeVisible();
  await isReadableAtEveryWidth(page);
});

test("a new version begins as a copy and asks for its own document and approval, each at its field", async () => {
  await page.getByRole("button", { name: "New version" }).click();
  await expect(heading()).toHaveText("Brackenhall household warranty: a version being written");
  await page.getByRole("button", { name: "Save and check" }).click();
  const wrong = page.getByRole("region", { name: "3 things to put right" });
  await expect(wrong).toContainText("Document with the terms");
  await wrong.getByRole("link", { name: /Document with the terms/ }).click();
  await expect(page.getByLabel("Document with the terms")).toBeFocused();
  await isReadableAtEveryWidth(page);
});

test("a length that cannot be read is kept as typed, with its place", async () => {
  await page.getByLabel("Document with the terms").fill("Terms 2026, edition 2");
  await page.getByLabel("Approved by").fill("Service manager");
  await page.getByLabel("Approved on").fill("2026-10-30");
  await page.locator('[name="terms.0.term"]').fill("two years or so");
  await page.getByRole("button", { name: "Save and check" }).click();
  await expect(page.getByRole("region", { name: "One thing to put right" })).toContainText("Terms, Line 1, For");
  await expect(page.locator('[name="terms.0.term"]')).toHaveValue("two years or so");
});

test("sale days that another version governs are refused in a sentence", async () => {
  await page.locator('[name="terms.0.term"]').fill("90 days");
  await page.getByLabel("First sale day").fill("2022-06-01");
  await page.getByRole("button", { name: "What would it change?" }).click();
  await expect(heading()).toHaveText("This version would overlap another one");
  await expect(page.getByText(/overlap those of version 1|version 2/).first()).toBeVisible();
  await page.getByRole("link", { name: "Change the draft" }).click();
});

test("it shows which open decisions it would alter, with their amounts, before it is published", async () => {
  await page.getByLabel("First sale day").fill("2023-01-02");
  await page.getByRole("button", { name: "What would it change?" }).click();
  await expect(heading()).toHaveText(/would alter [\d,]+ open decisions?: USD [\d,.]+ → USD [\d,.]+/);
  const altered = page.getByRole("table", { name: /decisions?/i }).first();
  await expect(altered).toContainText("→");
  await expect(page.getByText("Version 2 is closed")).toBeVisible();
  const download = page.waitForEvent("download");
  await page.getByRole("link", { name: "All of them as CSV" }).click();
  expect((await download).suggestedFilename()).toBe("decisions-that-change.csv");
  await isReadableAtEveryWidth(page);
});

test("a draft that is given up leaves nothing", async () => {
  await page.getByRole("link", { name: "The draft" }).click();
  await page.getByRole("button", { name: "Delete this draft" }).click();
  await expect(heading()).toContainText("decide who pays");
  await expect(page.getByRole("table", { name: "Brackenhall" })).toContainText("1 Jan 2023 on");
});

/** The last free job on the list, since other tests take theirs from its top. */
async function lastFree(): Promise<{ readonly job: string; readonly serial: string; readonly component: string }> {
  await page.goto("/claims");
  const row = page.getByRole("row").filter({ hasText: isFree }).last();
  const [, serial, component] = await row.getByRole("cell").allTextContents();
  const job = await row.getByRole("rowheader").getByRole("link").textContent();
  return { job: job ?? "", serial: serial ?? "", component: (component ?? "").replaceAll(" ", "_") };
}

let open: Awaited<ReturnType<typeof lastFree>>;

test("a campaign on one serial names the open job that it would alter, with both answers, before it is published", async () => {
  open = await lastFree();
  await page.goto("/shop/coverage/policy/dunmorrow_household/1");
  await page.getByRole("button", { name: "New version" }).click();
  await page.getByLabel("Name of the policy").fill("Campaign for trying out");
  await page.locator('[name="key"]').fill("campaign_for_trying_out");
  await page.getByLabel("Who pays").selectOption("campaign");
  await page.getByLabel("Name of the payer").fill("Campaign company");
  await page.getByLabel("Maker of the units").fill("");
  await page.getByLabel("Document with the terms").fill("Bulletin 12");
  await page.getByLabel("Approved by").fill("Service manager");
  await page.getByLabel("Approved on").fill("2026-10-30");
  await page.locator('[name="appliesTo.serials"]').fill(`${open.serial} to ${open.serial}`);
  const campaign = { key: "tried", name: "Tried out", component: open.component, sourceDocument: "Bulletin 12" };
  for (const [field, value] of Object.entries(campaign))
    await page.locator(`[name="campaigns.0.${field}"]`).fill(value);
  await page.locator('[name="campaigns.0.serials"]').fill(`${open.serial} to ${open.serial}`);
  for (const item of ["parts", "labour"])
    await page.locator(`[name="campaigns.0.pays"][value="${item}"]`).setChecked(true);
  await page.getByRole("button", { name: "What would it change?" }).click();
  await expect(heading()).toHaveText(/^Publishing this would alter \d+ open decisions?: USD/);
  const altered = page.getByRole("row").filter({ hasText: open.job });
  await expect(altered).toContainText(/→ covered.*Campaign company/);
  await isReadableAtEveryWidth(page);
});

test("it is published under the name of who is signed in, and then decides that job", async () => {
  await page.getByRole("button", { name: "Publish" }).click();
  await expect(heading()).toHaveText(/^Campaign for trying out, version 1: units sold/);
  await page.goto("/shop/coverage");
  await expect(page.getByRole("table", { name: "Campaign company" })).toContainText("Bulletin 12");
  await page.goto(`/claims/for/${encodeURIComponent(open.job)}`);
  await expect(page.getByRole("main")).toContainText("Campaign company");
});

test("a version is retired with a reason, and stays to be read", async () => {
  await page.goto("/shop/coverage");
  await page.getByRole("link", { name: "Campaign for trying out, version 1" }).click();
  await page.getByLabel("Why").fill("Entered to try it out");
  await page.getByRole("button", { name: "Retire version 1" }).click();
  await expect(heading()).toHaveText("Campaign for trying out, version 1: retired");
  await expect(page.getByText("Entered to try it out")).toBeVisible();
  await page.goto(`/claims/for/${encodeURIComponent(open.job)}`);
  await expect(page.getByRole("main")).not.toContainText("Campaign company");
});
