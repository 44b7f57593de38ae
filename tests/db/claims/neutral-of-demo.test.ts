import { createHash } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import addFormats from "ajv-formats";
import { afterAll, beforeAll, expect, test } from "vitest";
import { judgeJob } from "@/app/_claims/judge-job";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadAttachment } from "@/db/queries/attachment";
import { loadClaimable } from "@/db/queries/claimable";
import { loadJobRecord } from "@/db/queries/job-record";
import { loadFile } from "@/db/writes/load-file";
import { day } from "@/lib/calendar/day";
import { claimPacket } from "@/lib/claims/claim-packet";
import { canonicalJson } from "@/lib/claims/neutral/canonical-json";
import { claimJsonSchema } from "@/lib/claims/neutral/claim-json-schema";
import { neutralClaim } from "@/lib/claims/neutral/neutral-claim";
import type { NeutralClaim } from "@/lib/claims/neutral/neutral-claim-document";
import { scenarioOf } from "@/synthetic-data/scenario";
import { writeDemo } from "@/synthetic-data/write-demo";
import { startAfresh } from "../intake-files";

// Every claim of an invented company, written for other programs, is held to the published schema by a validator that
// knows nothing of this one, and its sums and hashes are counted anew.

const until = day("2026-10-31");
const demoFiles = [
  "shop.json",
  "policies.json",
  "ranges.csv",
  "units.csv",
  "contracts.csv",
  "jobs.csv",
  "part-lines.csv",
  "readings.csv",
  "photos.csv",
];
const folder = mkdtempSync(join(tmpdir(), "ohmsworth-neutral-"));
const found: { readonly claim: NeutralClaim; readonly jobNumber: string; readonly photoIds: readonly string[] }[] = [];

beforeAll(async () => {
  await startAfresh();
  await writeDemo(scenarioOf({ seed: 1, size: 0.1, until }), folder);
  for (const name of demoFiles) {
    const mode = "add and set aside";
    const result = await loadFile({ path: join(folder, name), fileName: name, mode, today: until });
    expect(result.kind, name).toBe("added");
  }
  await readOnly(
    async (db) => {
      for (const { jobNumber } of await loadClaimable(db, until)) {
        const stored = await loadJobRecord(db, jobNumber);
        if (stored === undefined) throw new Error(`job ${jobNumber} is listed and not there`);
        const { claims, ranges } = await judgeJob(db, stored, until);
        for (const { given, assembly } of claims) {
          if (assembly.kind !== "claim") continue;
          const reference = { claimNumber: `C-${jobNumber}`, servicer: "Servicer" };
          const packet = claimPacket(given, assembly.claim, ranges, reference);
          const photoIds = [...packet.photos, ...packet.documents].map(({ id }) => id);
          found.push({ claim: neutralClaim({ given, claim: assembly.claim, packet }), jobNumber, photoIds });
        }
      }
    },
    { timeoutSeconds: 120 },
  );
}, 600_000);
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
  await closeDatabase();
});

test("another validator takes every claim of the company", () => {
  const ajv = new Ajv2020({ allErrors: true, strict: true, strictTypes: false });
  addFormats.default(ajv);
  const isClaim = ajv.compile(claimJsonSchema());
  expect(found.length).toBeGreaterThan(5);
  const wrong = found.flatMap(({ claim }) =>
    isClaim(JSON.parse(canonicalJson(claim))) ? [] : [{ job: claim.header.jobNumber, errors: isClaim.errors }],
  );
  expect(wrong).toEqual([]);
});

test("there are measurements with a time and a range among them, and attachments whose bytes have the named hash", async () => {
  const measurements = found.flatMap(({ claim }) => claim.findings.measurements);
  expect(measurements.filter(({ takenAt, expected }) => takenAt !== null && expected !== null).length).toBeGreaterThan(
    0,
  );
  const withPhotos = found.filter(({ photoIds }) => photoIds.length > 0).slice(0, 5);
  expect(withPhotos.length).toBeGreaterThan(0);
  for (const { claim, jobNumber, photoIds } of withPhotos) {
    const files = await readOnly((db) => Promise.all(photoIds.map((id) => loadAttachment(db, jobNumber, id))));
    const hashes = files.map((file) =>
      createHash("sha256")
        .update(file?.content ?? "")
        .digest("hex"),
    );
    expect(claim.attachments.map(({ sha256 }) => sha256)).toEqual(hashes);
  }
});

test("each claim's lines less its deductions are its total", () => {
  const wrong = found.filter(({ claim: { money } }) => {
    const sum = (of: readonly { readonly amount: { readonly cents: number } }[]) =>
      of.reduce((cents, { amount }) => cents + amount.cents, 0);
    return sum(money.lines) - sum(money.deductions) !== money.total.cents;
  });
  expect(wrong).toEqual([]);
});
