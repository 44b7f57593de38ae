// A packet as the payer gets it: made in the browser, read back by programs that did not make it.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, type Page, test } from "@playwright/test";
import { Ajv2020 } from "ajv/dist/2020.js";
import addFormats from "ajv-formats";
import { unzipSync } from "fflate";
import sharp from "sharp";
import type { NeutralClaim } from "@/lib/claims/neutral/neutral-claim-document";
import { freeJob } from "./free-jobs";
import { readPdf } from "./read-pdf";

test.describe.configure({ timeout: 240_000 });

const hasPoppler = ["pdfinfo", "pdftotext", "pdfimages"].every((name) => spawnSync(name, ["-v"]).error === undefined);
const shots = [
  { subject: "Rating plate, model and serial readable", caption: "Left of the door" },
  { subject: "Proof of purchase", caption: "Receipt" },
] as const;

test("photos from a phone go into the packet without their place, and other programs read it back", async ({
  page,
}) => {
  const job = await freeJob(page);
  await addPhotos(page, job);
  const claim = await draftOf(page, job);
  const neutral = await claimForPrograms(page, claim);
  expect(neutral.attachments.map(({ takenAt }) => takenAt).sort()).toContain("2026-10-20T13:41:00Z");
  for (const { paper, size } of [
    { paper: "PDF, A4", size: "595.28 x 841.89 pts (A4)" },
    { paper: "PDF, Letter", size: "612 x 792 pts (letter)" },
  ]) {
    const bytes = await download(page, () => page.getByRole("link", { name: paper }).click());
    const sheets = await readPdf(bytes);
    expect(sheets.flatMap(({ cut }) => cut)).toEqual([]);
    expect(sheets.at(-1)?.text).toContain(`Page ${sheets.length} of ${sheets.length}`);
    holds(sheets.map(({ text }) => text).join(" "), neutral, claim);
    if (hasPoppler) await readByPoppler(bytes, { neutral, claim, size, pages: sheets.length });
  }
});

test("many drafts come in one download, a file a claim", async ({ page }) => {
  const first = await draftOf(page, await freeJob(page));
  const second = await draftOf(page, await freeJob(page));
  await page.goto("/claims?list=drafts");
  for (const claim of [first, second]) await page.getByRole("checkbox", { name: `Choose Claim ${claim}` }).check();
  const bytes = await download(page, () => page.getByRole("button", { name: "Download their packets" }).click());
  await expect(page.getByText("2 of 2 made.")).toBeVisible();
  const files = unzipSync(new Uint8Array(bytes));
  expect(Object.keys(files).sort()).toEqual(["claims.jsonl", `claim-${first}.pdf`, `claim-${second}.pdf`].sort());
  const lines = Buffer.from(files["claims.jsonl"] ?? [])
    .toString("utf8")
    .trim()
    .split("\n");
  expect(lines.map((line) => JSON.parse(line).header.claimNumber).sort()).toEqual([first, second].sort());
  for (const claim of [first, second])
    expect((await readPdf(files[`claim-${claim}.pdf`] ?? new Uint8Array()))[0]?.text).toContain(claim);
});

async function addPhotos(page: Page, job: string): Promise<void> {
  await page.goto(`/jobs/${job}`);
  for (const [index, { subject, caption }] of shots.entries()) {
    await page.getByLabel("What it shows").selectOption({ label: subject });
    await page.getByLabel("Photo or paper").setInputFiles({
      name: "phone.jpg",
      mimeType: "image/jpeg",
      buffer: await phonePhoto(index),
    });
    await page.getByLabel("Caption (optional)").fill(caption);
    await page.getByRole("button", { name: "Add", exact: true }).click();
    await expect(page.getByRole("img", { name: `${subject}: ${caption}` })).toBeVisible();
  }
  // The shop’s zone is four hours behind UTC on that day, which is what its own clocks showed.
  await expect(page.getByText("taken 2026-10-20 09:41, as the device said").first()).toBeVisible();
}

/** With what phones write beside the pixels: a place, an owner, a serial number of the camera. */
async function phonePhoto(index: number): Promise<Buffer> {
  return await sharp({ create: { width: 640, height: 480, channels: 3, background: index === 0 ? "#345" : "#a73" } })
    .withExif({
      IFD0: { Artist: "Somebody", Software: "Camera" },
      IFD2: { DateTimeOriginal: "2026:10:20 09:41:00", BodySerialNumber: "CAM-1234" },
      IFD3: { GPSLatitudeRef: "N", GPSLatitude: "41/1 52/1 0/1", GPSLongitudeRef: "W", GPSLongitude: "87/1 37/1 0/1" },
    })
    .jpeg()
    .toBuffer();
}

async function draftOf(page: Page, job: string): Promise<string> {
  await page.goto(`/claims/for/${job}`);
  await page.getByRole("button", { name: "Keep as a draft claim" }).first().click();
  await page.waitForURL(/\/claims\/C-/);
  return decodeURIComponent(new URL(page.url()).pathname.split("/").at(-1) ?? "");
}

/** The JSON, held to the schema that the site publishes by another validator. */
async function claimForPrograms(page: Page, claim: string): Promise<NeutralClaim> {
  const schema = await (await page.request.get("/claims/claim-schema.json")).json();
  const answer = await page.request.get(`/claims/${claim}/claim.json`);
  const neutral: NeutralClaim = await answer.json();
  const ajv = new Ajv2020({ strict: false });
  addFormats.default(ajv);
  expect(ajv.validate(schema, neutral), ajv.errorsText()).toBe(true);
  return neutral;
}

async function download(page: Page, act: () => Promise<void>): Promise<Buffer> {
  const waiting = page.waitForEvent("download");
  await act();
  return await readFile(await (await waiting).path());
}

function holds(text: string, { unit, header, findings, action, attachments }: NeutralClaim, claim: string): void {
  const year = action.completedOn.slice(0, 4);
  const wanted = [
    claim,
    header.jobNumber,
    unit.serial ?? "no serial",
    unit.model,
    String(Number(action.completedOn.slice(8))),
    year,
    ...findings.measurements.map(({ check }) => check.name),
    ...findings.measurements.flatMap(({ outcome }) => (outcome.kind === "number" ? [outcome.unit] : [])),
    ...attachments.map(({ sha256 }) => sha256),
  ];
  const plain = text.replaceAll(/\s+/g, "");
  expect(wanted.filter((words) => !plain.includes(words.replaceAll(/\s+/g, "")))).toEqual([]);
}

interface Expected {
  readonly neutral: NeutralClaim;
  readonly claim: string;
  readonly size: string;
  readonly pages: number;
}

/** Poppler, where it is installed (Debian: poppler-utils): text, size, pages, and pictures with nothing beside their pixels. */
async function readByPoppler(bytes: Buffer, { neutral, claim, size, pages }: Expected): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-e2e-packet-"));
  const path = join(folder, "packet.pdf");
  try {
    writeFileSync(path, bytes);
    const facts = execFileSync("pdfinfo", [path]).toString();
    expect(facts).toMatch(new RegExp(`^Pages: +${pages}$`, "m"));
    expect(facts).toContain(size);
    holds(execFileSync("pdftotext", ["-raw", path, "-"]).toString(), neutral, claim);
    execFileSync("pdfimages", ["-all", path, join(folder, "photo")]);
    const pictures = readdirSync(folder).filter((name) => name.startsWith("photo-"));
    expect(pictures).toHaveLength(shots.length);
    for (const name of pictures) {
      const { exif, xmp, iptc, icc, comments, width } = await sharp(readFileSync(join(folder, name))).metadata();
      expect(width).toBe(640);
      expect([exif, xmp, iptc, icc, comments].filter((part) => part !== undefined)).toEqual([]);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
