import { randomUUID } from "node:crypto";
import { keepDraft } from "@/app/_claims/keep-draft";
import { contentMaker } from "@/app/_claims/make-content";
import { readOnly } from "@/db/client";
import { loadClaimLife } from "@/db/queries/claim-life";
import type { DemoCandidate } from "@/db/queries/demo-candidates";
import { type ActRequest, actOnClaim } from "@/db/writes/claims/act-on-claim";
import { sendClaim } from "@/db/writes/claims/send-claim";
import { addDays, type Day } from "@/lib/calendar/day";
import { filingCheckTitles } from "@/lib/claims/checks/filing-case";
import { claimStanding } from "@/lib/claims/life/claim-standing";
import type { DemoStep, DemoStory } from "./stories";

const who = ["Ana", "Ben"] as const;

/** Builds the claim of one job and lets happen to it what the story says; false where the job can't be claimed. */
export async function tellStory(job: DemoCandidate, { steps }: DemoStory): Promise<boolean> {
  const builtOn = addDays(job.completedOn, 2);
  const kept = await keepDraft({
    jobNumber: job.jobNumber,
    policy: { id: job.policyId },
    by: who[0],
    today: builtOn,
    at: instantOf(builtOn),
  });
  if (kept.kind !== "kept") return false;
  for (const step of steps) await take(kept.claimNumber, step, addDays(job.completedOn, step.after));
  return true;
}

async function take(claimNumber: string, { act }: DemoStep, on: Day): Promise<void> {
  const life = await readOnly((db) => loadClaimLife(db, claimNumber));
  if (life === undefined) throw new Error(`${claimNumber} was not kept.`);
  const request: ActRequest = {
    claimNumber,
    seenVersion: life.version,
    key: randomUUID(),
    by: who[life.version % who.length] ?? who[0],
    note: "",
    at: instantOf(on),
  };
  const result = await (act === "send"
    ? sendClaim(
        { ...request, sentOn: on, way: "portal", reference: "", reasons },
        contentMaker({ today: on, sentOn: on, reasons }),
      )
    : actOnClaim(request, act(claimStanding(life.events), on)));
  if (result.kind !== "recorded") throw new Error(`${claimNumber}: ${JSON.stringify(result)}`);
}

/** The invented jobs have few papers, so each check that fails is passed over with the same words. */
const reasons = Object.fromEntries(
  Object.keys(filingCheckTitles).map((key) => [key, "Sent with what is on file; the payer was told."]),
);

function instantOf(on: Day): string {
  return `${on}T15:00:00Z`;
}
