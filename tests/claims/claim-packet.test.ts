import { expect, test } from "vitest";
import { assembleClaim } from "@/lib/claims/assemble-claim";
import { claimPacket } from "@/lib/claims/claim-packet";
import { centsInWords } from "@/lib/claims/money-words";
import type { JobRecord } from "@/lib/domain/job";
import { claimCase, pumpRecord } from "./claim-case";

function packetOf(record: JobRecord) {
  const given = claimCase(record);
  const assembly = assembleClaim(given);
  if (assembly.kind === "blocked") throw new Error(assembly.reasons.map((reason) => reason.sentence).join(" "));
  return claimPacket(given, assembly.claim, [], { claimNumber: "C-2025-0001", servicer: "Servicer" });
}

const whole = pumpRecord();

test("the cover names claim, payer, unit and the dates on file, and the file-by day", () => {
  const { cover } = packetOf(whole);
  expect(cover).toMatchObject({
    claimNumber: "C-2025-0001",
    payer: "Halvorsen",
    serial: "HW2100001",
    jobNumber: "J-1",
  });
  expect(cover.dates).toEqual([
    { label: "Bought", on: "2024-09-01" },
    { label: "Service requested", on: "2025-03-03" },
    { label: "Completed", on: "2025-03-05" },
  ]);
  expect(cover.filing.lastDay).toBe("2025-04-04");
});

test("every reading of the job is there with the range it was held against and its verdict", () => {
  const packet = packetOf(whole);
  expect(packet.readings.map((reading) => reading.number)).toEqual(whole.readings.map((reading) => reading.number));
  const winding = packet.readings.find((reading) => reading.verdict === "open");
  expect(winding?.range).toMatchObject({ unit: "ohm", source: "model sheet" });
  expect(packet.faultCodes.length).toBeGreaterThan(0);
});

test("a live reading carries its caution", () => {
  const live = packetOf(whole).readings.filter((reading) => reading.power === "live");
  expect(live.length).toBeGreaterThan(0);
  expect(live.filter((reading) => !reading.cautions.includes("live_work"))).toEqual([]);
});

test("the manifest lists every file once, under names of their own, with its hash", () => {
  const { manifest, photos } = packetOf(whole);
  expect(manifest).toHaveLength(whole.attachments.length);
  expect(new Set(manifest.map((entry) => entry.name)).size).toBe(manifest.length);
  expect(photos.map((photo) => photo.sha256)).toEqual(whole.attachments.map((attachment) => attachment.sha256));
});

test("the index counts what each section holds", () => {
  const { index, readings, photos } = packetOf(whole);
  expect(index.map((section) => section.number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  expect(index.find((section) => section.key === "readings")?.entries).toBe(readings.length);
  expect(index.find((section) => section.key === "photos")?.entries).toBe(photos.length);
});

test("nothing is missing in silence", () => {
  expect(packetOf(whole).notSupplied).toEqual([]);
  const poor = { ...whole, attachments: [], readings: whole.readings.filter((r) => r.check !== "pump_winding") };
  const { notSupplied } = packetOf(poor);
  expect(notSupplied.every((line) => line.startsWith("Not supplied: "))).toBe(true);
  expect(notSupplied.join(" ")).toMatch(/proof of purchase/);
  expect(notSupplied.join(" ")).toMatch(/winding/);
});

test("the story stands as the technician wrote it", () => {
  expect(packetOf(whole).story).toMatchObject({
    complaint: whole.job.complaint,
    cause: whole.job.causeNote,
    correction: whole.job.correction,
    component: "Drain pump",
  });
});

test("cents in words keep every cent", () => {
  expect([5, 100, 123_456, -50].map((cents) => centsInWords(cents, "USD"))).toEqual([
    "USD 0.05",
    "USD 1.00",
    "USD 1234.56",
    "USD -0.50",
  ]);
  expect(() => centsInWords(0.5, "USD")).toThrow(RangeError);
});
