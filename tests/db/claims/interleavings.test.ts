// Two people on one claim, in the order that chance gives: each write is stored, or its owner is told and shown both versions.
// A sample here; `npm run soak -- people` plays 1,000 rounds.
import { setTimeout as pause } from "node:timers/promises";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadClaimLife } from "@/db/queries/claim-life";
import { findClaimsThatDisagree } from "@/db/queries/claims-that-disagree";
import { day } from "@/lib/calendar/day";
import { seeded } from "../../calendar/seeded";
import { soakSeeds } from "../../soak-seeds";
import { fileFolder } from "../intake-files";
import { act, draftOf, send, startWithJobs, stored, versionOf } from "./claim-files";

const files = fileFolder();
const rounds = soakSeeds(Array.from({ length: 20 }, (_, index) => index + 1));
/** A claim's history is read with every act, so it is not let grow without end. */
const roundsOfClaim = 50;
const claims: string[] = [];
beforeAll(async () => {
  const count = Math.ceil(rounds.length / roundsOfClaim);
  await startWithJobs(files, count);
  for (let job = 1; job <= count; job++) {
    const claim = await draftOf(`J${job}`);
    await send(claim, day("2023-05-12"));
    claims.push(claim);
  }
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

interface Told {
  readonly reference: string;
  readonly seenVersion: number;
  readonly result: Awaited<ReturnType<typeof act>>;
}

/** Looks at the claim, thinks for a while, and posts a cent. */
async function somebody(claim: string, reference: string, random: (limit: number) => number): Promise<Told> {
  const [before, thought] = [random(4), random(4)];
  await pause(before);
  const seenVersion = await versionOf(claim);
  await pause(thought);
  const paid = { what: "paid", on: day("2023-07-01"), reference, lines: [{ line: 1, cents: 1 }] } as const;
  return { reference, seenVersion, result: await act(claim, paid, { seenVersion, by: reference }) };
}

test(`in ${rounds.length} rounds no write is lost without a word`, { timeout: 3_600_000 }, async () => {
  const recorded: string[] = [];
  let told = 0;
  for (const [round, seed] of rounds.entries()) {
    const claim = claims[Math.floor(round / roundsOfClaim)] ?? "";
    const random = seeded(seed);
    const both = await Promise.all(["Ana", "Ben"].map((who) => somebody(claim, `${who} ${seed}`, random)));
    for (const { reference, seenVersion, result } of both) {
      if (result.kind === "recorded") recorded.push(reference);
      else {
        expect(result, `seed ${seed}`).toMatchObject({ kind: "stale", seenVersion });
        if (result.kind === "stale") expect(result.now.version, `seed ${seed}`).toBeGreaterThan(seenVersion);
        told++;
      }
    }
    const got = both.some(({ result }) => result.kind === "recorded");
    expect(got, `seed ${seed}: somebody must get through`).toBe(true);
  }
  expect((await references()).sort()).toEqual(recorded.sort());
  expect(told + recorded.length).toBe(2 * rounds.length);
  const cents = await Promise.all(claims.map(async (claim) => Number((await stored(claim)).paid_cents)));
  expect(cents.reduce((sum, each) => sum + each, 0)).toBe(recorded.length);
  expect(await readOnly(findClaimsThatDisagree)).toEqual([]);
});

/** Of all payments on file, in the histories of the claims. */
async function references(): Promise<string[]> {
  const found: string[] = [];
  for (const claim of claims) {
    const events = (await readOnly((db) => loadClaimLife(db, claim)))?.events ?? [];
    found.push(...events.flatMap(({ act: what }) => (what.what === "paid" ? [what.reference] : [])));
  }
  return found;
}
