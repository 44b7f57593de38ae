"use server";
import { revalidatePath } from "next/cache";
import { loadJudgedJob } from "@/app/_claims/judge-job";
import { mayDo } from "@/app/_people/may-do";
import { readOnly } from "@/db/client";
import { askTechnician } from "@/db/writes/sheets/ask-technician";
import { askableGaps } from "@/lib/sheets/askable-gaps";

/** Asks for one thing that is missing as the job stands now; what is there meanwhile is not asked. */
export async function ask(form: FormData): Promise<void> {
  const person = await mayDo("sheets.ask");
  const jobNumber = String(form.get("job") ?? "");
  const item = String(form.get("item") ?? "");
  const found = await readOnly((db) => loadJudgedJob(db, jobNumber));
  const gap = found === undefined ? undefined : askableGaps(found.judged.evidence).find((each) => each.item === item);
  if (gap !== undefined)
    await askTechnician({ jobNumber, item, label: gap.label, check: gap.check, subject: gap.subject, by: person.name });
  revalidatePath(`/sheet/ask/${encodeURIComponent(jobNumber)}`);
}
