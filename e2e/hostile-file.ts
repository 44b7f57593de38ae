// A file of somebody's, whose name, headings and cells are hostile, through its steps; a row of it is held back.
import { expect } from "@playwright/test";
import { chooseFile, patient } from "./file-steps";
import { addressOf } from "./hostile-forms";
import { hostile, hostileFileName } from "./hostile-words";
import type { Walk } from "./watch-for-harm";

/** @returns the report of its rows with problems, which is there until the others are added */
export async function enterFile({ page, look }: Walk): Promise<string> {
  await chooseFile(page, { name: hostileFileName("sheet.csv"), mimeType: "text/csv", buffer: Buffer.from(rows()) });
  await look();
  if (new URL(page.url()).pathname.endsWith("/look")) await page.getByRole("button", { name: "Match columns" }).click();
  await page.getByLabel(`${hostile["other heading"]} goes to`).selectOption("technician");
  await look();
  await page.getByRole("button", { name: "Check rows" }).click();
  await expect(page.getByRole("table", { name: "What becomes of the rows" })).toBeVisible(patient);
  await look();
  const report = await page.request.get(await addressOf(page.getByRole("link", { name: "Report as CSV" })));
  const text = await report.text();
  await page.getByRole("button", { name: /^Add / }).click();
  await page.waitForURL(/\/files\/\d+$/, patient);
  await look();
  await page.getByRole("link", { name: /^Correct \d rows? held back/ }).click();
  await page.waitForURL(/\/held$/);
  await look();
  await page
    .getByRole("link", { name: /^Row \d$/ })
    .first()
    .click();
  await page.waitForURL(/\/held\/\d+$/);
  await look();
  await page.getByText("Leave out", { exact: true }).first().click();
  await page.getByLabel("Why").first().fill(hostile["reason to leave out"]);
  await page
    .getByRole("button", { name: /^Leave row/ })
    .first()
    .click();
  await expect(page.getByText(hostile["reason to leave out"]).first()).toBeAttached();
  await look();
  return text;
}

function rows(): string {
  const { maker, model } = hostile;
  const day = { requested_on: "2026-09-01", completed_on: "2026-09-03" };
  const job = { status: "closed", maker, model, product_type: "front_load_washer", serial: "PLANTED-1", ...day };
  const theirs = { [hostile.heading]: hostile.cell, [hostile["other heading"]]: hostile.technician };
  const good = { job_number: "PLANTED-FILE-1", ...job, component: "planted_gland", cause: "component", ...theirs };
  const held = { ...good, job_number: "PLANTED-FILE-2", component: hostile["word of a cell"] };
  const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`;
  return [Object.keys(good), Object.values(good), Object.values(held)]
    .map((cells) => `${cells.map(quoted).join(",")}\r\n`)
    .join("");
}
