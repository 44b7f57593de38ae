import { loadDelayRecord } from "@/db/queries/reporting-delay";
import { loadOpenings } from "@/db/queries/reporting-delay-openings";
import { loadShop } from "@/db/queries/shop";
import type { RateQuestion } from "@/lib/failures/rate-question";
import { reportingDelays } from "@/lib/failures/reporting-delay";
import { mostRecentWeeks, type RecentCorrection, recentCorrection } from "@/lib/failures/reporting-delay-correction";
import { keptAnswers } from "./kept-answers";

export type RecentQuestion = Pick<RateQuestion, "counting" | "from" | "until" | "where" | "level">;

/** What the counts of the last weeks will come to; undefined where no job is closed. */
export async function keptRecent(question: RecentQuestion): Promise<RecentCorrection | undefined> {
  const { counting, from, until, where, level } = question;
  const asked: RecentQuestion = { counting, from, until, where, level };
  const delays = await keptDelays();
  if (delays === undefined) return undefined;
  const since = delays.lastClosedOn - 7 * mostRecentWeeks;
  if (until <= since) return { kind: "complete" };
  return await corrections([asked, since], async (db) => {
    const opened = await loadOpenings(db, { ...asked, since });
    return () => recentCorrection(delays, { ...asked, opened });
  });
}

const corrections = keptAnswers<RecentCorrection | undefined>();
const laws = keptAnswers<ReturnType<typeof reportingDelays>>();

/** The law of delays is the company's own, whatever is asked. */
function keptDelays() {
  return laws("all", async (db, today) => {
    const { timeZone } = await loadShop(db);
    const record = await loadDelayRecord(db, { today, timeZone });
    return () => reportingDelays(record);
  });
}
