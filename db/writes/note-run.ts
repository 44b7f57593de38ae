import { inTransaction } from "../in-transaction";
import { programRuns } from "../schema/change-log";

export type RunOf = typeof programRuns.$inferSelect.program;

/** What came of a run: how many things were found, and the first of them in sentences. */
export interface Found {
  readonly found: number;
  readonly first: readonly string[];
}

/** So many sentences are kept of a run. */
const most = 20;

/**
 * Runs one of the program's own checks and keeps when it ran and what it found, also when it did not come to its end.
 * @throws what `work` threw, after that was kept
 */
export async function noteRun(program: RunOf, now: () => Date, work: () => Promise<Found>): Promise<Found> {
  const startedAt = now();
  const keep = async (came: Found & { readonly problem: string | null }) =>
    inTransaction(async (tx) => {
      const finishedAt = new Date(Math.max(now().getTime(), startedAt.getTime())); // a clock may have been put back
      const times = { startedAt: startedAt.toISOString(), finishedAt: finishedAt.toISOString() };
      await tx.insert(programRuns).values({ program, ...times, ...came, first: came.first.slice(0, most) });
    });
  let came: Found;
  try {
    came = await work();
  } catch (error) {
    await keep({ found: 0, first: [], problem: error instanceof Error ? error.name : "unknown" });
    throw error;
  }
  await keep({ ...came, problem: null });
  return came;
}
