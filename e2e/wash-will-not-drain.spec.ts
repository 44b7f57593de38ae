// The main job worked through whole: ten front-load washers that will not drain, from the job to the packet in hand.
import { readFile } from "node:fs/promises";
import { expect, type Page, test } from "@playwright/test";
import { type NoDrainExpected, noDrainExpected, type PacketExpected } from "./no-drain-expected";
import { readPdf } from "./read-pdf";

const liveCaution = "Live test: qualified persons only, insulated tools, one hand, no jewellery.";

test.describe.configure({ mode: "default" });
test.describe("a front-load washer that will not drain", () => {
  let page: Page;
  test.beforeAll(async ({ browser }) => {
    page = await browser.newPage();
  });
  test.afterAll(async () => {
    await page.close();
  });

  for (const expected of noDrainExpected) {
    test(`${expected.name}: cause, readings, counted ${expected.isFailure ? "" : "not "}as a failure`, async () => {
      await showsTheJob(page, expected);
      await isCounted(page, expected);
    });

    test(`${expected.name}: ${expected.packet === undefined ? "no claim, and why" : "claim and packet"}`, async () => {
      await page.goto(`/claims/for/${expected.job}`);
      if (expected.packet === undefined) await cannotBeClaimed(page, expected);
      else await becomesAClaim(page, expected, expected.packet);
    });
  }
});

async function showsTheJob(page: Page, { job, titled, completed, readings, hasLiveStep }: NoDrainExpected) {
  await page.goto(`/jobs/${job}`);
  const title = page.getByRole("heading", { level: 1 });
  await expect(title).toContainText(`Job ${job}: `);
  await expect(title).toContainText(titled);
  await expect(title).toContainText(completed);
  await expect(page.getByText(liveCaution)).toHaveCount(hasLiveStep ? 1 : 0);
  const rows = page.locator("#readings tbody tr");
  for (const [check, found, shows] of readings) {
    const row = rows.filter({ has: page.getByRole("rowheader", { name: check, exact: true }) });
    await expect(row, check).toHaveCount(1);
    await expect(row.getByRole("cell").nth(0), check).toContainText(found);
    await expect(row.getByRole("cell").nth(1), check).toContainText(shows);
  }
}

/** A job of all closed jobs; one of the failures only where the part itself failed. */
async function isCounted(page: Page, { job, isFailure }: NoDrainExpected) {
  await page.goto(`/jobs?count=calls&words=${job}`);
  await expect(page.getByRole("link", { name: job, exact: true })).toHaveCount(1);
  await page.goto(`/jobs?count=failures&words=${job}`);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(`${isFailure ? "1 job" : "0 jobs"} in this view`);
  await expect(page.getByRole("link", { name: job, exact: true })).toHaveCount(isFailure ? 1 : 0);
}

async function cannotBeClaimed(page: Page, { job, blocked }: NoDrainExpected) {
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(`Job ${job} can’t become a claim`);
  await expect(page.getByRole("main").getByText(blocked ?? /^$/)).not.toHaveCount(0);
  await expect(page.getByRole("button", { name: "Keep as a draft claim" })).toHaveCount(0);
}

async function becomesAClaim(page: Page, { job, completed }: NoDrainExpected, packet: PacketExpected) {
  const main = page.getByRole("main");
  await expect(page.getByRole("heading", { level: 1 })).toContainText(/^Job J-\d+: USD [\d,.]+ can be claimed/);
  for (const words of packet.coverage) await expect(main).toContainText(words);
  const amount = ((await main.textContent()) ?? "").match(/USD [\d,]+\.\d\d/)?.[0] ?? "no amount";
  await page.getByRole("button", { name: "Keep as a draft claim" }).click();
  await page.waitForURL(/\/claims\/C-/);
  await expect(page.getByRole("heading", { level: 1 })).toContainText(`: ${amount} from Brackenhall`);
  await expect(main).toContainText(packet.proven);

  const claim = decodeURIComponent(new URL(page.url()).pathname.split("/").at(-1) ?? "");
  const waiting = page.waitForEvent("download");
  await page.getByRole("link", { name: "PDF, A4" }).click();
  const sheets = await readPdf(await readFile(await (await waiting).path()));
  const pages = sheets.map(({ text }) => text);
  expect(sheets.flatMap(({ cut }) => cut)).toEqual([]);

  await page.getByRole("link", { name: "Packet", exact: true }).click();
  await page.waitForURL(/\/packet$/);
  const onPage = (await main.textContent()) ?? "";
  const held = [
    claim,
    job,
    packet.serial,
    amount,
    ...packet.values,
    completed,
    packet.sold,
    packet.reported,
    liveCaution,
  ];
  for (const words of held) {
    expect(plain(onPage), `the packet's page holds ${words}`).toContain(plain(words));
    expect(plain(pages.join(" ")), `the packet's PDF holds ${words}`).toContain(plain(words));
  }
  expect(plain(pages[0] ?? ""), "the cover names the serial").toContain(packet.serial);

  await page.goto(`/claims/for/${job}`);
  await expect(page.getByRole("link", { name: claim, exact: true })).toHaveCount(1);
  await expect(page.getByRole("button", { name: "Keep as a draft claim" })).toHaveCount(0);
}

/** Without spaces: a PDF breaks lines where its columns end. */
function plain(text: string): string {
  return text.replaceAll(/\s+/g, "");
}
