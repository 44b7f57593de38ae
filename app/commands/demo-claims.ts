// Puts claims in every state onto the invented company's jobs, through the same writes as the pages: what the lists, the
// clocks and the payers' figures show is then a whole year's work. It refuses a company that is not invented.

import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadClaimCounts } from "@/db/queries/claim-list";
import { loadDemoCandidates } from "@/db/queries/demo-candidates";
import { loadShop } from "@/db/queries/shop";
import { addDays, type Day, day } from "@/lib/calendar/day";
import { demoStories } from "./demo-claims/stories";
import { tellStory } from "./demo-claims/tell-story";

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
  return 0;
}

/** Each story on the first job that can carry it: old enough, covered, and not claimed yet. */
async function tellAll(until: Day): Promise<number> {
  const jobs = await readOnly((db) => loadDemoCandidates(db, { from: addDays(until, -200), to: until }));
  const free = [...jobs];
  let told = 0;
  for (const story of demoStories) {
    for (let index = 0; index < free.length; index++) {
      const job = free[index];
      if (job === undefined || addDays(job.completedOn, story.days) > until) continue;
      if (story.isDraft && addDays(job.completedOn, 25) < until) continue;
      free.splice(index, 1);
      if (await tellStory(job, story)) {
        told++;
        break;
      }
      index--;
    }
  }
  return told;
}

main()
  .then(async (code) => {
    await closeDatabase();
    process.exit(code);
  })
  .catch((error) => {
    console.error(error);
    process.exit(1);
  });
