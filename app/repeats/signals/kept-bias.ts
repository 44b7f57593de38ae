import { type BiasMeasures, loadBiasMeasures } from "@/db/queries/signal-bias";
import { keptAnswers } from "../kept-answers";

const kept = keptAnswers<BiasMeasures>();

/** What bends every figure of the company, worked out once while the data stand. */
export async function keptBias(): Promise<BiasMeasures> {
  return await kept("all", async (db) => {
    const measures = await loadBiasMeasures(db);
    return () => measures;
  });
}
