// Puts claims in every state onto the invented company's jobs, through the same writes as the pages: what the lists, the
// clocks and the payers' figures show is then a whole year's work. It refuses a company that is not invented.

import { readOnly } from "@/db/client";
import { loadClaimCounts } from "@/db/queries/claim-list";
import { type DemoCandidate, loadContractCandidates, loadDemoCandidates } from "@/db/queries/demo-candidates";
import { loadShop } from "@/db/queries/shop";
import { addDays, type Day, day } from "@/lib/calendar/day";
import { takeInDemoList } from "./demo-claims/payers-list";
import { contractStories, type DemoStory, demoStories } from "./demo-claims/stories";
import { tellStory } from "./demo-claims/tell-story";
import { runCommand } from "./run-command";

async function main(): Promise<number> {
  const until = day(process.argv[2] ?? "");
  const shop = await readOnly(loadShop);
  if (!shop.demo) {
    console.error("This company is not an invented one: no claims were made.");
    return 1;
  }
  if ((await readOnly(loadClaimCounts)).byState.size > 0) {
    console.log("There are claims already: none were added.");
    return 0;
  }
  const told = await tellAll(until);
  console.log(`Claims: ${told} made, in every state that a claim can be in.`);
  const lines = await takeInDemoList(until);
  console.log(`A payer’s list of ${lines} lines was taken in.`);
  return 0;
}

/** Each story on a job that can carry it: covered, not claimed yet, and old enough that nothing of it lies ahead. */
async function tellAll(until: Day): Promise<number> {
  const span = { from: addDays(until, -200), to: until };
  const free = await readOnly((db) => loadDemoCandidates(db, span));
  let told = 0;
  for (const story of demoStories) if (await tellOnAny(free, story, until)) told++;
  const underContract = await readOnly((db) => loadContractCandidates(db, span));
  for (const story of contractStories) if (await tellOnAny(underContract, story, until)) told++;
  return told;
}

async function tellOnAny(free: DemoCandidate[], story: DemoStory, until: Day): Promise<boolean> {
  for (const near of [true, false]) {
    for (const job of [...free].filter((each) => canCarry(each, story, until, near))) {
      free.splice(free.indexOf(job), 1);
      if (await tellStory(job, story)) return true;
    }
  }
  return false;
}

/** @param near its last act lies in the last weeks, which an open claim should; any job will do for want of one */
function canCarry({ completedOn }: DemoCandidate, { days, isDraft }: DemoStory, until: Day, near: boolean): boolean {
  const lastAct = addDays(completedOn, days);
  return lastAct <= until && addDays(lastAct, near || isDraft ? 22 : 200) >= until;
}

await runCommand(main);
