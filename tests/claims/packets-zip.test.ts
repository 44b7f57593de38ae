import { unzipSync } from "fflate";
import { expect, test, vi } from "vitest";
import type { PacketFileParts } from "@/app/_claims/load-packet-file";
import { packetsZip } from "@/app/_claims/packets-zip";
import { assembleClaim } from "@/lib/claims/assemble-claim";
import { claimPacket } from "@/lib/claims/claim-packet";
import { neutralClaim } from "@/lib/claims/neutral/neutral-claim";
import { claimCase, pumpRecord } from "./claim-case";

vi.setConfig({ testTimeout: 120_000 });

async function partsOf(claimNumber: string): Promise<PacketFileParts> {
  if (claimNumber === "C-3")
    return { kind: "none", sentence: "Claim C-3 has no packet: its job no longer supports it." };
  const given = claimCase(pumpRecord());
  const assembly = assembleClaim(given);
  if (assembly.kind === "blocked") throw new Error("the made record is claimable");
  const packet = claimPacket(given, assembly.claim, [], { claimNumber, servicer: "Servicer" });
  const neutral = neutralClaim({ given, claim: assembly.claim, packet });
  return { kind: "packet", packet, neutral, photos: new Map(), paper: "A4" };
}

async function unzipped(numbers: readonly string[], load = partsOf) {
  const told: number[] = [];
  const zip = packetsZip(numbers, { load, paper: null, onProgress: (done) => told.push(done) });
  const files = unzipSync(new Uint8Array(await new Response(zip).arrayBuffer()));
  return { files, told, textOf: (name: string) => Buffer.from(files[name] ?? []).toString() };
}

test("each claim has its PDF and its line, and one that has no packet is named without stopping the others", async () => {
  const { files, told, textOf } = await unzipped(["C-1", "C-3", "C-2"]);
  expect(Object.keys(files)).toEqual(["claim-C-1.pdf", "claim-C-2.pdf", "claims.jsonl", "not-included.txt"]);
  expect(textOf("claim-C-2.pdf").slice(0, 5)).toBe("%PDF-");
  const lines = textOf("claims.jsonl").trimEnd().split("\n");
  expect(lines.map((line) => JSON.parse(line).header.claimNumber)).toEqual(["C-1", "C-2"]);
  expect(textOf("not-included.txt")).toMatch(/^Claim C-3 has no packet/);
  expect(told).toEqual([1, 2, 3]);
});

test("nothing is made before it is read, and nothing after the reader has gone", async () => {
  const asked: string[] = [];
  const load = (number: string) => {
    asked.push(number);
    return partsOf(number);
  };
  const reader = packetsZip(["C-1", "C-2", "C-4", "C-5"], {
    load,
    paper: null,
    onProgress: () => undefined,
  }).getReader();
  await reader.read();
  await reader.cancel();
  expect(asked.length).toBeLessThan(3);
});

test("an error of one claim reaches the reader", async () => {
  const load = () => Promise.reject(new Error("the database is gone"));
  await expect(unzipped(["C-1"], load)).rejects.toThrow("the database is gone");
});

test("more than a hundred are refused", () => {
  const numbers = Array.from({ length: 101 }, (_, index) => `C-${index}`);
  expect(() => packetsZip(numbers, { load: partsOf, paper: null, onProgress: () => undefined })).toThrow(RangeError);
});
