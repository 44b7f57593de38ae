import { createHash } from "node:crypto";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import sharp from "sharp";
import { expect, test, vi } from "vitest";
import { packetPdf } from "@/app/_claims/packet-pdf";
import { day } from "@/lib/calendar/day";
import { assembleClaim } from "@/lib/claims/assemble-claim";
import { claimPacket } from "@/lib/claims/claim-packet";
import type { ClaimPacket } from "@/lib/claims/packet";
import type { JobRecord } from "@/lib/domain/job";
import { formatDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { formatOutcome } from "@/lib/format/format-reading";
import { noDrainCases } from "@/synthetic-data/no-drain-cases";
import { claimCase, pumpRecord } from "./claim-case";

// Embedding fonts takes seconds where other work keeps the processor busy.
vi.setConfig({ testTimeout: 240_000 });

const createdAt = new Date("2025-03-20T12:00:00Z");
const papers = ["A4", "LETTER"] as const;
const photo = await sharp({ create: { width: 640, height: 480, channels: 3, background: "#8899aa" } })
  .jpeg()
  .toBuffer();

/** The drain pump that a real call would bring, with two earlier jobs and hashes of their own for every file. */
function washer(): JobRecord {
  const open = noDrainCases.find(({ failureMode }) => failureMode === "winding_open");
  if (open === undefined) throw new Error("the made cases lost their open winding");
  const { complaint, causeNote, correction } = open;
  const record = pumpRecord({ job: { complaint, causeNote, correction } });
  const earlier = ["J-98", "J-97"].map((jobNumber) => ({
    jobNumber,
    completedOn: day("2024-11-02"),
    component: "drain_pump",
    symptom: "will_not_drain",
    cause: "foreign_object" as const,
  }));
  const attachments = record.attachments.map((file, index) => ({
    ...file,
    caption: `View ${index + 1}`,
    sha256: createHash("sha256").update(file.id).digest("hex"),
    takenAt: "2025-03-05T10:15:00Z",
    bytes: photo.length,
  }));
  return { ...record, readings: [...record.readings, ...open.readings], earlier, attachments };
}

function packetOf(record: JobRecord): ClaimPacket {
  const given = claimCase(record);
  const assembly = assembleClaim(given);
  if (assembly.kind === "blocked") throw new Error(assembly.reasons.map((reason) => reason.sentence).join(" "));
  return claimPacket(given, assembly.claim, [], { claimNumber: "C-2025-0001", servicer: "Servicer" });
}

const picturesOf = ({ photos }: ClaimPacket) => new Map(photos.map(({ id }) => [id, photo]));

interface Line {
  readonly text: string;
  readonly y: number;
  readonly height: number;
}

async function read(bytes: Buffer) {
  const file = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const pages: (readonly Line[])[] = [];
  for (let number = 1; number <= file.numPages; number++) {
    const { items } = await (await file.getPage(number)).getTextContent();
    pages.push(
      items.flatMap((item) =>
        "str" in item && item.str.trim() !== ""
          ? [{ text: item.str, y: Number(item.transform[5]), height: item.height }]
          : [],
      ),
    );
  }
  const { info } = await file.getMetadata();
  return { pages, info: info as { readonly Title?: string; readonly Language?: string } }; // typed as Object by pdf.js
}

/** Lines broken by the layout do not count: words are compared without the spaces between them. */
const bare = (text: string) => text.replace(/\s+/g, "");
const textOf = (pages: readonly (readonly Line[])[]) =>
  bare(
    pages
      .flat()
      .map(({ text }) => text)
      .join(""),
  );

test.each(papers)("on %s everything the payer needs can be read back out of the file", async (paper) => {
  const packet = packetOf(washer());
  const { pages, info } = await read(await packetPdf(packet, picturesOf(packet), { paper, createdAt }));
  const text = textOf(pages);
  const { cover, money, readings, photos, story, history } = packet;
  const wanted = [
    cover.serial ?? "",
    cover.maker,
    cover.model,
    ...cover.dates.map(({ on }) => formatDay(on)),
    formatDay(cover.filing.lastDay),
    formatMoney({ cents: money.totalCents, currency: money.currency }),
    ...money.lines.map(({ cents }) => formatMoney({ cents, currency: money.currency })),
    ...readings.map(({ outcome }) => formatOutcome(outcome)),
    ...readings.flatMap(({ range }) => (range === undefined ? [] : [range.source])),
    ...packet.manifest.flatMap(({ name, sha256 }) => [name, sha256]),
    ...photos.map(({ sha256 }) => `SHA-256 begins ${sha256.slice(0, 12)}`),
    ...history.map(({ jobNumber }) => jobNumber),
    ...packet.coverage.arithmetic,
    ...packet.index.map(({ title, number }) => `section ${number} of 8${title}`),
    story.complaint,
    story.cause,
    story.correction,
    "The model sheet, local codes and licensed practice decide.",
    `Page ${pages.length} of ${pages.length}`,
  ];
  expect(wanted.filter((words) => words === "" || !text.includes(bare(words)))).toEqual([]);
  expect(text).toContain("Ω");
  expect(info).toMatchObject({
    Title: `Claim C-2025-0001: ${cover.maker} ${cover.model}, serial ${cover.serial}`,
    Language: "en",
  });
});

test("a live reading brings its caution, and a missing thing is said in the file", async () => {
  const whole = washer();
  const poor = { ...whole, attachments: [], readings: whole.readings.filter(({ check }) => check !== "pump_winding") };
  const packet = packetOf(poor);
  expect(packet.notSupplied.length).toBeGreaterThan(1);
  const { pages } = await read(await packetPdf(packet, new Map(), { paper: "A4", createdAt }));
  const text = textOf(pages);
  expect(packet.notSupplied.filter((line) => !text.includes(bare(line)))).toEqual([]);
  expect(text).toContain(bare("qualified persons only"));
});

test("a photo whose bytes are lost or no picture is named in its place", async () => {
  const packet = packetOf(washer());
  const [first, second] = packet.photos;
  if (first === undefined || second === undefined) throw new Error("the record lost its photos");
  const bytes = new Map(picturesOf(packet)).set(second.id, Buffer.from("no picture"));
  bytes.delete(first.id);
  const { pages } = await read(await packetPdf(packet, bytes, { paper: "A4", createdAt }));
  expect(textOf(pages)).toContain(bare(`Not supplied: ${first.name}, its picture is not in the store.`));
  expect(textOf(pages)).toContain(bare(`Not supplied: ${second.name}, its file is not a picture`));
});

test.each(papers)("on %s no page ends in a heading, and nothing is printed outside the page", async (paper) => {
  const long = Array.from({ length: 400 }, (_, index) => `word${index}`).join(" ");
  // Stories of different lengths move every heading past every place on the page.
  for (const length of [300, 1200]) {
    const base = washer();
    const record = { ...base, job: { ...base.job, correction: long.slice(0, length) } };
    const packet = packetOf(record);
    const { pages } = await read(await packetPdf(packet, new Map(), { paper, createdAt }));
    const headings = new Set([
      ...packet.index.map(({ title }) => title),
      "Evidence",
      "Cautions",
      "Fault codes",
      "Files",
    ]);
    const footers = pages.map((lines) => lines.findIndex(({ text }) => /^Page \d+ of \d+$/.test(text)));
    expect(footers).not.toContain(-1);
    for (const [index, lines] of pages.entries()) {
      const body = lines.filter(({ y }) => y >= 58);
      expect(headings.has(body.at(-1)?.text ?? ""), `page ${index + 1} at ${length} ends in ${body.at(-1)?.text}`).toBe(
        false,
      );
      expect(body.length).toBeGreaterThan(0);
      expect(lines.filter(({ y }) => y < 20)).toEqual([]);
    }
  }
});

test("equal input gives equal bytes, and another moment another file", async () => {
  const packet = packetOf(washer());
  const options = { paper: "A4", createdAt } as const;
  const first = await packetPdf(packet, picturesOf(packet), options);
  expect(first.equals(await packetPdf(packet, picturesOf(packet), options))).toBe(true);
  const later = { ...options, createdAt: new Date("2025-03-21T12:00:00Z") };
  expect(first.equals(await packetPdf(packet, picturesOf(packet), later))).toBe(false);
  await expect(packetPdf(packet, new Map(), { paper: "A4", createdAt: new Date("") })).rejects.toThrow(RangeError);
});
