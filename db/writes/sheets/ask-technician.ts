import { sql } from "drizzle-orm";
import type { PhotoSubject } from "@/lib/domain/job";
import { inTransaction } from "../../in-transaction";

export interface NewAsk {
  readonly jobNumber: string;
  /** Key of the missing item of the evidence check. */
  readonly item: string;
  readonly label: string;
  readonly check: string | undefined;
  readonly subject: PhotoSubject | undefined;
  readonly by: string;
}

/** Asks the technician of the closed job for something that its claim lacks. Asking twice is asking once; asking after an answer opens it again. */
export async function askTechnician(ask: NewAsk): Promise<{ readonly kind: "asked" | "no such job" }> {
  return await inTransaction(async (tx) => {
    const asked = await tx.rows(sql`
      insert into technician_asks (unit_id, job_id, item, label, check_key, subject, technician, asked_at, asked_by)
      select j.unit_id, j.job_id, ${ask.item}, ${ask.label}, ${ask.check ?? null}, ${ask.subject ?? null}, j.technician, now(), ${ask.by}
      from jobs j where j.job_number = ${ask.jobNumber}
      on conflict (unit_id, job_id, item) do update set answered_at = null, answer = null, note = '',
        asked_at = case when technician_asks.answered_at is null then technician_asks.asked_at else now() end
      returning item`);
    return { kind: asked.length > 0 ? "asked" : "no such job" };
  });
}

export interface AskAnswer {
  readonly jobNumber: string;
  readonly item: string;
  readonly answer: "given" | "cannot be had";
  readonly note: string;
}

/** The technician says that it is there now, or that it cannot be had; false where nothing of the kind is asked. */
export async function answerAsk({ jobNumber, item, answer, note }: AskAnswer): Promise<boolean> {
  return await inTransaction(async (tx) => {
    // A clock that was put back must not make the answer earlier than the question.
    const answered = await tx.rows(sql`
      update technician_asks a set answered_at = greatest(now(), a.asked_at), answer = ${answer}, note = ${note}
      from jobs j where j.unit_id = a.unit_id and j.job_id = a.job_id and j.job_number = ${jobNumber} and a.item = ${item}
      returning a.item`);
    return answered.length > 0;
  });
}
