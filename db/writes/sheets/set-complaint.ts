import { sql } from "drizzle-orm";
import { inTransaction } from "../../in-transaction";

/** False where no open job has that number. Closing takes it over with who, when and why. */
export async function setComplaint(jobNumber: string, complaint: string): Promise<boolean> {
  return await inTransaction(async (tx) => {
    const set = await tx.rows(
      sql`update open_jobs set complaint = ${complaint} where job_number = ${jobNumber} and closed_at is null returning job_id`,
    );
    return set.length > 0;
  });
}
