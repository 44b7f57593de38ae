// What a service manager and an owner write: of a signal, of a sheet, of terms, of what the desk asks.
import { expect } from "@playwright/test";
import { addressOf, enter, open } from "./hostile-forms";
import { hostile } from "./hostile-words";
import type { Walk } from "./watch-for-harm";

/** What is said of a signal, and what technicians are told. @returns its address */
export async function enterOfSignal(walk: Walk): Promise<string> {
  const { page, look } = walk;
  await open(walk, "/repeats");
  await page.locator('a[href^="/repeats/signals/"]').filter({ hasText: hostile.maker }).first().click();
  await page.waitForURL(/\/repeats\/signals\//);
  await look();
  const at = new URL(page.url()).pathname;
  await enter(walk, { fields: { Reason: hostile["mark of a signal"] }, button: "Watch this", done: "Noted." });
  await enter(walk, {
    fields: { Note: hostile["note for technicians"], "From serial": "", "To serial": "" },
    button: "Show it to technicians",
    done: `“${hostile["note for technicians"]}”`,
  });
  return at;
}

/** A range that the shop itself sets, and what the desk asks a technician. */
export async function enterOfSheets(walk: Walk): Promise<void> {
  const { page, look } = walk;
  await page.goto("/shop/sheets/front_load_washer/drain_pump");
  const ranges = page.locator("#ranges");
  await ranges.getByLabel("Model").selectOption({ label: `${hostile.maker} ${hostile.model}` });
  await ranges.getByLabel("Check").selectOption({ label: "Pump winding (ohm)" });
  await ranges.getByLabel("Mark").selectOption("published");
  const texts = {
    "Good from": "5",
    "Good to": "9",
    Unit: "ohm",
    Source: hostile["source by hand"],
    Why: hostile["why a range"],
  };
  for (const [label, text] of Object.entries(texts)) await ranges.getByLabel(label, { exact: true }).fill(text);
  await ranges.getByRole("button", { name: "Set the range" }).click();
  await expect(ranges.getByRole("row").filter({ hasText: hostile["source by hand"] })).toBeVisible();
  await look();
  const job = encodeURIComponent(hostile["job number"]);
  await page.goto(`/sheet/ask/${job}`);
  await page.getByRole("button", { name: "Ask technician" }).first().click();
  await expect(page.getByText(/^Asked /).first()).toBeVisible();
  await look();
  await page.goto(`/sheet/asked/${job}`);
  await page.getByLabel("Note for the desk").fill(hostile["note for the desk"]);
  await look();
  await page.getByRole("button", { name: "It cannot be had" }).click();
  await expect(page.getByText("Nothing is asked any more")).toBeVisible();
}

/** A new version of terms, as far as its review. @returns address of the file of what it would change */
export async function enterOfTerms(walk: Walk): Promise<string> {
  const { page, look } = walk;
  await open(walk, "/shop/coverage/policy/planted_household/1");
  await page.getByRole("button", { name: "New version" }).click();
  await page.getByLabel("Document with the terms").fill(hostile["new terms"]);
  await look();
  await page.getByLabel("Approved by").fill(hostile["new approver"]);
  await page.getByLabel("Approved on").fill("2026-10-30");
  await page.getByLabel("First sale day").fill("2026-01-02");
  await page.locator('[name="terms.0.term"]').fill("30 days");
  await page.getByRole("button", { name: "What would it change?" }).click();
  await page.waitForURL(/\/review$/);
  await look();
  return await addressOf(page.getByRole("link", { name: "All of them as CSV" }));
}

/** A customer whom nobody knows asks to be forgotten. */
export async function enterOfKeeping({ page, look }: Walk): Promise<void> {
  await page.goto("/shop/keeping");
  await page.getByLabel("Names, numbers, addresses").fill(hostile["name of nobody"]);
  await page.getByLabel("Why").fill(hostile["reason to forget"]);
  await page.getByRole("button", { name: "Look what would go" }).click();
  await page.getByRole("checkbox", { name: /cannot be brought back/ }).check();
  await look();
  await page.getByRole("button", { name: "Erase for good" }).click();
  await expect(page.getByText("The customer is forgotten")).toBeVisible();
  await look();
}
