import { HowCounted } from "@/app/_ui/how-counted";
import { describeCorrectedCount } from "@/lib/format/describe-corrected-count";
import { keptRecent, type RecentQuestion } from "../kept-recent";
import { countedNoun } from "../rate-wording";

/** Says what the counts of the last weeks will come to, where the period reaches into them; nothing otherwise. */
export async function StillOnTheirWay({ question }: { readonly question: RecentQuestion }) {
  const recent = await keptRecent(question);
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
