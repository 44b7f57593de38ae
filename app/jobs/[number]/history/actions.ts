"use server";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { liftJobEdit } from "@/db/writes/edit-job";
import { upholdJobEdit } from "@/db/writes/uphold-job-edit";

const settleForm = z.object({
  job: z.string().min(1).max(200),
  edit: z.coerce.number().int().positive(),
  by: z.string().trim().min(1).max(100),
  settle: z.enum(["keep", "take"]),
});

/** A person settles a field of which a file says otherwise than what was set here. */
export async function settleDifference(form: FormData): Promise<void> {
  const person = await mayDo("jobs.change");
  form.set("by", person.name);
  const { job, edit, by, settle } = settleForm.parse(Object.fromEntries(form));
  if (settle === "keep") await upholdJobEdit({ editId: edit, by });
  else await liftJobEdit({ editId: edit, by });
  const path = `/jobs/${encodeURIComponent(job)}`;
  revalidatePath(path, "layout");
  redirect(`${path}/history`);
}
