// What people type into forms, a hostile text in each field that takes one.
import { expect, type Locator } from "@playwright/test";
import sharp from "sharp";
import { keyOfPart } from "./hostile-pages";
import { hostile, hostileFileName } from "./hostile-words";
import type { Walk } from "./watch-for-harm";

interface Form {
  /** Where it stands, unless it is open already. */
  readonly at?: string;
  readonly fields?: Readonly<Record<string, string>>;
  readonly chosen?: Readonly<Record<string, string | { readonly label: string }>>;
  readonly button: string;
  /** What is said when it is done. */
  readonly done: string | RegExp;
}

const jobPath = encodeURIComponent(hostile["job number"]);

export async function open({ page, look }: Walk, at: string): Promise<void> {
  await page.goto(at);
  await look();
}

/** Fills in the one form that has the button, sends it and looks at what comes of it. */
export async function enter(walk: Walk, { at, fields = {}, chosen = {}, button, done }: Form): Promise<void> {
  const { page, look } = walk;
  if (at !== undefined) await open(walk, at);
  const send = page.locator("button").filter({ hasText: new RegExp(`^${button}`) });
  const form = page.locator("form").filter({ has: send }).first();
  for (const [label, option] of Object.entries(chosen))
    await form.getByLabel(label, { exact: true }).selectOption(option);
  for (const [label, text] of Object.entries(fields)) await form.getByLabel(label, { exact: true }).fill(text);
  await form.locator(send).first().click();
  await expect(page.getByText(done).first()).toBeVisible();
  await look();
}

/** Keys, people, and a job as it is opened for a technician. */
export async function enterAtTheDesk(walk: Walk): Promise<void> {
  await enter(walk, {
    at: "/files/keys",
    fields: { "Which program the key is for": hostile.key },
    button: "Make a key",
    done: "Copy it now",
  });
  await enter(walk, {
    at: "/shop/people",
    fields: { Name: hostile.invited, "E-mail": "planted@company.example" },
    chosen: { Role: "reader" },
    button: "Make a link",
    done: /\/join\//,
  });
  await enter(walk, {
    at: "/sheet/open",
    fields: {
      "Job number": hostile["open job"],
      Serial: hostile.serial,
      "Complaint in the customer’s words": hostile["complaint on the phone"],
    },
    chosen: { "What the customer notices": "will_not_drain", Technician: hostile.technician },
    button: "Open the job",
    done: /closed jobs? of this symptom/,
  });
  const { page, look } = walk;
  await page.getByRole("button", { name: /^Go to the finding/ }).click();
  await page.getByRole("button", { name: "Review" }).click();
  await expect(page.getByLabel("Complaint", { exact: true })).toHaveValue(hostile["complaint on the phone"]);
  await look();
}

/** What is set, proven and joined of a job and its unit. */
export async function enterOfJob(walk: Walk): Promise<void> {
  const { page, look } = walk;
  await enter(walk, {
    at: `/jobs/${jobPath}/edit?field=correction`,
    fields: { "What it should say": hostile["value by hand"], Why: hostile["reason by hand"] },
    button: "Set it",
    done: "Correction is set",
  });
  await open(walk, `/jobs/${jobPath}`);
  const buffer = await sharp({ create: { width: 40, height: 30, channels: 3, background: "#a73" } })
    .jpeg()
    .toBuffer();
  await page.getByLabel("What it shows").selectOption("plate");
  await page
    .getByLabel("Photo or paper")
    .setInputFiles({ name: hostileFileName("photo"), mimeType: "image/jpeg", buffer });
  await page.getByLabel("Caption (optional)").fill(hostile["caption by hand"]);
  await page.getByRole("button", { name: "Add", exact: true }).click();
  await expect(page.getByRole("img", { name: hostile["caption by hand"] })).toBeVisible();
  await look();
  await page.getByRole("link", { name: hostile.serial, exact: true }).first().click();
  await page.waitForURL(/\/units\/\d+$/);
  await look();
  const facts = `${new URL(page.url()).pathname}/facts`;
  await page.goto(facts);
  const spans = page.locator("form").filter({ has: page.getByLabel("Out from") });
  await spans.getByLabel("Out from").fill("2026-07-01");
  await spans.getByLabel("Back on").fill("2026-07-03");
  await spans.getByLabel("What shows it").fill(hostile["proof of a span"]);
  await spans.getByRole("button").click();
  await expect(page.getByText(hostile["proof of a span"]).first()).toBeVisible();
  const other = page.locator("form").filter({ has: page.getByLabel("First used") });
  await other.getByLabel("First used").fill("2026-06-09");
  await other.getByLabel("What shows it").fill(hostile["proof of facts"]);
  await other.getByRole("button").click();
  await expect(page.getByText(hostile["proof of facts"]).first()).toBeVisible();
  await look();
  await open(walk, "/jobs/PLANTED-JOIN/unit?serial=PLANTED-3");
  await page.getByRole("radio", { name: /PLANTED-3\b/ }).check();
  await enter(walk, {
    fields: { "What shows it": hostile["proof of a join"] },
    button: "Join the job to this unit",
    done: hostile["proof of a join"],
  });
}

/** What is said of parts: their stock, who sells them, and what is to be ordered. @returns address of the line of the order list */
export async function enterOfParts(walk: Walk): Promise<string> {
  const part = `/parts/${keyOfPart(hostile["newer part"])}`;
  await enter(walk, {
    at: `${part}/stock`,
    fields: { Pieces: "3", Note: hostile["note on stock"] },
    button: "Enter it",
    done: "Entered in the ledger",
  });
  await enter(walk, {
    at: `${part}/terms`,
    fields: { Supplier: hostile.supplier },
    button: "Keep these",
    done: "Kept; reorder point",
  });
  await enter(walk, {
    at: "/parts/orders/new",
    fields: {
      "Part number": hostile["new part"],
      Name: hostile["name of a new part"],
      Pieces: "2",
      Supplier: hostile.supplier,
      "Cost of one": "3.00",
      Note: hostile["note on an order"],
    },
    button: "Add to the order list",
    done: "On the order list as a draft",
  });
  const line = walk.page.getByRole("row").filter({ hasText: hostile["new part"] });
  return await addressOf(line.getByRole("link", { name: "Order or change" }));
}

/** Where a link leads. */
export function addressOf(link: Locator): Promise<string> {
  return link.first().evaluate((anchor: HTMLAnchorElement) => anchor.href);
}
