import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { packetPdf } from "@/app/_claims/packet-pdf";
import { readPdf } from "@/e2e/read-pdf";
import { assembleClaim } from "@/lib/claims/assemble-claim";
import { claimPacket } from "@/lib/claims/claim-packet";
import type { ClaimPacket } from "@/lib/claims/packet";
import type { JobRecord } from "@/lib/domain/job";
import { formatDay } from "@/lib/format/format-day";
import { formatOutcome } from "@/lib/format/format-reading";
import { claimCase, pumpRecord } from "./claim-case";

// The file is read back by programs that did not make it: Poppler's pdfinfo, pdftotext and pdfimages where they are
// installed (Debian: poppler-utils), and pdf.js always.

const hasPoppler = ["pdfinfo", "pdftotext", "pdfimages"].every((name) => spawnSync(name, ["-v"]).error === undefined);
if (!hasPoppler) console.log("Poppler is not installed, so its readings of the packet are left out.");

const word = "Unterbrechungsfreiewasserpumpenwicklungspruefung".repeat(6);
const folder = mkdtempSync(join(tmpdir(), "ohmsworth-packet-"));
const path = join(folder, "packet.pdf");
let packet: ClaimPacket;
let bytes: Buffer;

/** Sixty readings, forty photos, long texts, other alphabets and words that fit no line. */
function hard(photo: Buffer): JobRecord {
  const base = pumpRecord();
  const { readings, attachments } = base;
  return {
    ...base,
    job: {
      ...base.job,
      complaint: `Вода не сливается. Δεν αδειάζει. 洗濯機 😀 ${word}`,
      correction: "word ".repeat(2500),
    },
    readings: Array.from({ length: 60 }, (_, index) => ({
      ...pick(readings, index),
      number: index + 1,
      takenAt: "2025-03-05T16:15:00Z",
    })),
    attachments: Array.from({ length: 40 }, (_, index) => ({
      ...pick(attachments, index),
      id: String(1000 + index),
      bytes: photo.length,
      caption: index % 3 === 0 ? `${word} ${"Обмотка разорвана. ".repeat(40)}`.slice(0, 500) : "View",
    })),
  };
}

function pick<T>(list: readonly T[], index: number): T {
  const found = list[index % list.length];
  if (found === undefined) throw new Error("the list is empty");
  return found;
}

beforeAll(async () => {
  const photo = await sharp({ create: { width: 400, height: 300, channels: 3, background: "#446688" } })
    .jpeg()
    .toBuffer();
  const given = claimCase(hard(photo));
  const assembly = assembleClaim(given);
  if (assembly.kind === "blocked") throw new Error(assembly.reasons.map(({ sentence }) => sentence).join(" "));
  const reference = { claimNumber: "C-2025-0001", servicer: "Servicer", timeZone: "America/Chicago" };
  packet = claimPacket(given, assembly.claim, [], reference);
  const photos = new Map(packet.photos.map(({ id }) => [id, photo]));
  bytes = await packetPdf(packet, photos, { paper: "LETTER", createdAt: new Date("2025-03-20T00:00:00Z") });
  writeFileSync(path, bytes);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("nothing is cut by the paper, and letters without a shape are owned up to", async () => {
  const pages = await readPdf(bytes);
  expect(pages.flatMap(({ cut }) => cut)).toEqual([]);
  const text = pages.map((page) => page.text).join(" ");
  for (const words of ["Вода не сливается.", "Δεν αδειάζει.", "stand as □ (U+6D17", "taken 2025-03-05"])
    expect(text).toContain(words);
});

test("every picture and drawing has words that stand for it", async () => {
  const file = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const alternatives: string[] = [];
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number);
    alternatives.push(...figuresOf(await page.getStructTree()));
  }
  expect(alternatives.filter((words) => words === "")).toEqual([]);
  for (const { name } of packet.photos)
    expect(alternatives.some((words) => words.startsWith(`Photo ${name}.`))).toBe(true);
  expect(alternatives).toContain("Scale with the expected range 110–126 V and a mark at 118 V. Inside its range.");
});

/** The alternative of each figure below a node of the tree; empty where it has none. */
function figuresOf(node: unknown): string[] {
  const { role, alt, children = [] }: { role?: string; alt?: string; children?: readonly unknown[] } = Object(node);
  return [...(role === "Figure" ? [alt ?? ""] : []), ...children.flatMap(figuresOf)];
}

describe.skipIf(!hasPoppler)("Poppler", () => {
  const run = (name: string, ...options: readonly string[]) =>
    execFileSync(name, options, { maxBuffer: 100_000_000 }).toString();

  test("finds a tagged file on Letter with a title and as many pages as it says", () => {
    const facts = run("pdfinfo", path);
    expect(facts).toMatch(/^Tagged: +yes$/m);
    expect(facts).toMatch(/^Page size: +612 x 792 pts \(letter\)$/m);
    expect(facts).toMatch(/^Title: +Claim C-2025-0001: /m);
    const pages = /^Pages: +(\d+)$/m.exec(facts)?.[1];
    expect(run("pdftotext", path, "-")).toContain(`Page ${pages} of ${pages}`);
  });

  test("finds headings, and a figure for each picture and drawing", () => {
    const tree = run("pdfinfo", "-struct-text", path);
    const headings = [...tree.matchAll(/^ *(H[1-3]) /gm)].map(([, level]) => level);
    expect(headings[0]).toBe("H1");
    expect(headings.filter((level) => level === "H2").length).toBeGreaterThanOrEqual(packet.index.length);
    const figures = [...tree.matchAll(/^ *Figure/gm)].length;
    const drawn = packet.readings.filter(
      ({ range, outcome }) => range !== undefined && outcome.kind === "number",
    ).length;
    expect(figures).toBe(packet.photos.length + drawn);
  });

  test("reads serial, readings, dates and hashes", () => {
    const text = run("pdftotext", "-raw", path, "-").replace(/\s+/g, "");
    const wanted = [
      packet.cover.serial ?? "none",
      ...packet.cover.dates.map(({ on }) => formatDay(on)),
      ...packet.readings.map(({ outcome }) => formatOutcome(outcome)),
      ...packet.manifest.map(({ sha256 }) => sha256),
    ];
    expect(wanted.filter((words) => !text.includes(words.replace(/\s+/g, "")))).toEqual([]);
  });

  test("takes out forty photos, and nothing stands in them beside the pixels", async () => {
    execFileSync("pdfimages", ["-all", path, join(folder, "photo")]);
    const files = Array.from({ length: 40 }, (_, index) => join(folder, `photo-${String(index).padStart(3, "0")}.jpg`));
    for (const file of files) {
      const { exif, xmp, iptc, icc, comments, width } = await sharp(file).metadata();
      expect(width).toBe(400);
      expect([exif, xmp, iptc, icc, comments].filter((part) => part !== undefined)).toEqual([]);
    }
  });
});
