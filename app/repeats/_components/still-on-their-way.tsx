import { todayIn } from "@/app/_clock/today";
import { HowCounted } from "@/app/_ui/how-counted";
import { readOnly } from "@/db/client";
import type { Reader } from "@/db/database-types";
import { loadDelayRecord } from "@/db/queries/reporting-delay";
import { loadOpenings } from "@/db/queries/reporting-delay-openings";
import { loadShop } from "@/db/queries/shop";
import type { RateQuestion } from "@/lib/failures/rate-question";
import { reportingDelays } from "@/lib/failures/reporting-delay";
import { mostRecentWeeks, type RecentCorrection, recentCorrection } from "@/lib/failures/reporting-delay-correction";
import { describeCorrectedCount } from "@/lib/format/describe-corrected-count";
import { countedNoun } from "../rate-wording";

type Question = Pick<RateQuestion, "counting" | "from" | "until" | "where" | "level">;

/** Says what the counts of the last weeks will come to, where the period reaches into them; nothing otherwise. */
export async function StillOnTheirWay({ question }: { readonly question: Question }) {
  const recent = await readOnly((db) => loadRecent(db, question));
  if (recent?.kind !== "corrected") return null;
  const sentence = describeCorrectedCount(recent.count, {
    weeks: recent.weeks,
    counted: countedNoun(question.counting),
  });
  if (sentence === undefined) return null;
  return (
    <p>
      {sentence} The rates count what is on record. <HowCounted of="reporting-delay">How that is foreseen</HowCounted>
    </p>
  );
}

async function loadRecent(db: Reader, question: Question): Promise<RecentCorrection | undefined> {
  const { timeZone } = await loadShop(db);
  const delays = reportingDelays(await loadDelayRecord(db, { today: todayIn(timeZone), timeZone }));
  if (delays === undefined) return undefined;
  const since = delays.lastClosedOn - 7 * mostRecentWeeks;
  if (question.until <= since) return { kind: "complete" };
  return recentCorrection(delays, { ...question, opened: await loadOpenings(db, { ...question, since }) });
}
