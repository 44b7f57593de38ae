// A claim on the job whose every word is hostile: sent, answered by its payer's list, cut, appealed.
import { expect } from "@playwright/test";
import { enter, open } from "./hostile-forms";
import { hostile, hostileFileName } from "./hostile-words";
import type { Walk } from "./watch-for-harm";

/** @returns the claim's number */
export async function enterOfClaim(walk: Walk): Promise<string> {
  const { page } = walk;
  const claim = await makeDraft(walk);
  const act = (slug: string) => `/claims/${claim}/do/${slug}`;
  await open(walk, act("sent"));
  const reasons = page.getByLabel(/: why it is sent all the same$/);
  for (const field of await reasons.all()) await field.fill(hostile.override);
  await enter(walk, {
    fields: { Reference: hostile["reference of a sending"], Note: hostile["note on a claim"] },
    button: "Mark as sent",
    done: /, sent$/,
  });
  await enter(walk, {
    at: act("received"),
    fields: { "The payer’s own number": hostile["payer's own number"] },
    button: "Received by the payer",
    done: /, received$/,
  });
  await open(walk, "/claims/failed-parts/tags");
  await readList(walk, claim);
  await open(walk, "/claims/disputes");
  await enter(walk, {
    at: act("appealed"),
    fields: { "What the appeal rests on": hostile.appeal },
    button: "Appeal",
    done: /, appealed$/,
  });
  await enter(walk, {
    at: act("answered"),
    fields: { "The payer’s own words": hostile["payer's words"] },
    chosen: {
      "The payer’s answer": { label: "Rejected" },
      "Our reason": { label: "Amount above the payer's schedule" },
    },
    button: "Record the answer",
    done: /, rejected$/,
  });
  await enterFate(walk, claim);
  return claim;
}

/** What became of the failed part. */
async function enterFate(walk: Walk, claim: string): Promise<void> {
  const { page } = walk;
  await page.goto("/claims/failed-parts");
  await page.getByRole("row").filter({ hasText: claim }).first().getByRole("checkbox").check();
  await enter(walk, {
    fields: { "Tag or parcel": hostile.tag, Reason: hostile["reason of a fate"] },
    button: "Enter it for the chosen",
    done: "1 of 1 went",
  });
}

async function makeDraft(walk: Walk): Promise<string> {
  const { page, look } = walk;
  await open(walk, `/claims/for/${encodeURIComponent(hostile["job number"])}`);
  await page.getByRole("button", { name: "Keep as a draft claim" }).first().click();
  await page.waitForURL(/\/claims\/C-/);
  await look();
  return decodeURIComponent(new URL(page.url()).pathname.split("/").at(-1) ?? "");
}

/** The payer pays less, says why in its words, and pays a claim that nobody knows. */
async function readList({ page, look }: Walk, claim: string): Promise<void> {
  const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`;
  const lines = [
    ["Your claim", "Amount paid", "Remark", hostile["heading of a list"]],
    [claim, "1.00", hostile.remark, hostile["cell of a list"]],
    [`NOT-OURS ${hostile["claim of a list"]}`, "44.10", "", ""],
  ];
  const buffer = Buffer.from(lines.map((cells) => `${cells.map(quoted).join(",")}\r\n`).join(""));
  await page.goto("/claims/answers");
  const form = page.locator("form").filter({ hasText: "Number of the payment" });
  await form.getByLabel("Payer").selectOption(hostile.payer);
  await form.getByLabel("Number of the payment").fill(hostile.payment);
  await form.getByLabel("The list").setInputFiles({ name: hostileFileName("list.csv"), mimeType: "text/csv", buffer });
  await form.getByRole("button", { name: "Read the list" }).click();
  await page.waitForURL(/\/claims\/answers\/\d+/);
  await look();
  await page.getByRole("button", { name: "Read the lines" }).click();
  await page.getByLabel(`“${hostile.remark}” means`).selectOption({ label: "Amount above the payer's schedule" });
  await page.getByRole("button", { name: "Remember" }).click();
  await expect(page.getByText("Remembered for this payer")).toBeVisible();
  await page.getByText("Set aside", { exact: true }).first().click();
  await page.getByLabel("Why row 3 is set aside").fill(hostile.aside);
  await page.getByRole("button", { name: "Set aside", exact: true }).click();
  await expect(page.getByRole("table", { name: /^Set aside/ })).toBeVisible();
  await page.getByRole("button", { name: "Post 1 line" }).click();
  await expect(page.getByRole("table", { name: "Posted (1)" })).toBeVisible();
  await look();
}
