import { readFileSync } from "node:fs";
import { expect, type Page, test } from "@playwright/test";
import { loadBadLot } from "./load-bad-lot";
import { isReadableAtEveryWidth } from "./readable";

// The manager looks at what stands out, goes to the jobs behind it, and says what becomes of it.

test.beforeAll(async () => {
  test.setTimeout(180_000);
  await loadBadLot();
});

async function openFirst(page: Page): Promise<void> {
  await page.goto("/repeats");
  await page.getByRole("link", { name: /^Drain pump: Hollin HN40/ }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("what their ages predict");
}

test("from the list to the jobs behind a signal in three clicks, with nothing that a reader cannot use", async ({
  page,
}) => {
  await page.goto("/repeats");
  await expect(page.getByText(/may be luck/)).toBeVisible();
  await page.getByRole("link", { name: /^Drain pump: Hollin HN40/ }).click();
  await expect(page.getByText(/Failures crowd in units made .* Serials H23030/)).toBeVisible();
  await isReadableAtEveryWidth(page);
  await page.getByRole("link", { name: /jobs behind this/ }).click();
  await page.getByRole("link", { name: /^BL-/ }).first().click();
  await expect(page).toHaveURL(/\/jobs\/BL-/);
});

test("dismissing needs a reason, sets the line aside, and can be taken back", async ({ page }) => {
  await openFirst(page);
  const title = (await page.getByRole("heading", { level: 1 }).textContent())?.split(" — ")[0] ?? "";
  await page.getByRole("button", { name: "Dismiss" }).click();
  await expect(page.getByText("Write the reason")).toBeVisible();
  await page.getByLabel("Reason").fill("Known, the supplier was changed");
  await page.getByRole("button", { name: "Dismiss" }).click();
  await expect(page.getByText("Noted.")).toBeVisible();
  await page.goto("/repeats");
  await expect(
    page.getByRole("region", { name: "Signals, the least luck first" }).getByRole("link", { name: title }),
  ).toHaveCount(0);
  await page.getByText(/^Set aside/).click();
  await page.getByRole("link", { name: title }).click();
  await page.getByRole("button", { name: "Take that back" }).click();
  await expect(page.getByText("Nobody has said anything of it that still holds.")).toBeVisible();
});

test("a note for technicians, and the list of units in the field", async ({ page }) => {
  await openFirst(page);
  await page.getByLabel("Note").fill("Look at the crimp of the winding lead first.");
  await page.getByRole("button", { name: "Show it to technicians" }).click();
  await expect(page.getByText("“Look at the crimp of the winding lead first.”")).toBeVisible();
  await page.getByRole("button", { name: "No longer show it" }).click();
  await expect(page.getByText("“Look at the crimp of the winding lead first.”")).toHaveCount(0);
  const download = page.waitForEvent("download");
  await page.getByRole("link", { name: "The list with serials" }).click();
  const lines = readFileSync(await (await download).path(), "utf8")
    .trim()
    .split("\r\n");
  expect(lines[0]).toBe("serial,model,made_from,made_until,in_service_on,area,failed_this_way");
  expect(lines.filter((line) => line.startsWith("H2303")).length).toBeGreaterThan(2);
});

test("an earlier day shows what was known then; a day before the first job says so", async ({ page }) => {
  await page.goto("/repeats?as=2024-06-30");
  await expect(page.getByText("As it stood on Sun 30 Jun 2024")).toBeVisible();
  await page.goto("/repeats?as=2019-01-01");
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Choose a later day");
  await page.goto("/repeats/visits?by=technician");
  await expect(page.getByRole("heading", { level: 1 })).toContainText("at the first visit");
  await expect(page.getByText("Dashed: limits that 95 in 100 groups keep by chance")).toBeVisible();
});
