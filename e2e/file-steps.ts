// What every walk of a file through its steps does.
import { expect, type Page } from "@playwright/test";
import type { SentFile } from "./csv-files";

/** Work is done in a process of its own, which a busy machine starts slowly. */
export const patient = { timeout: 150_000 };

/** Chooses a file and waits until it was looked at. @param file what a browser sends, or a path */
export async function chooseFile(page: Page, file: SentFile | string): Promise<void> {
  await page.goto("/files/new");
  await page.getByLabel("File", { exact: true }).setInputFiles(file);
  await page.getByRole("button", { name: "Check rows" }).click();
  await page.waitForURL(/\/(look|rows)$/, patient);
}

/** New, changed, already here, held back, left out, and all rows of the file. */
export async function rowSum(page: Page): Promise<readonly number[]> {
  const sum = page.getByRole("table", { name: "What becomes of the rows" });
  await expect(sum).toBeVisible(patient);
  return (await sum.getByRole("cell").allTextContents()).map((text) => Number(text.replaceAll(",", "")));
}

/** Adds what is good. @returns the number of the load */
export async function addRows(page: Page): Promise<string> {
  await page.getByRole("button", { name: /^Add / }).click();
  await page.waitForURL(/\/files\/\d+$/, patient);
  return new URL(page.url()).pathname.split("/").at(-1) ?? "";
}

export async function takeBackLoad(page: Page, load: string): Promise<void> {
  await page.goto(`/files/${load}`);
  await page.getByRole("link", { name: "Take back this load" }).click();
  await page.getByRole("button", { name: `Take back load ${load}` }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("taken back", patient);
}
