"use server";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import type { FieldProblem } from "@/app/_ui/error-summary";
import { editableFields, editJobField } from "@/db/writes/edit-job-field";
import { fieldInWords } from "../field-in-words";

export interface EditState {
  readonly problems: readonly FieldProblem[];
  /** What was typed, shown again while something is wrong. */
  readonly texts: Readonly<Record<string, string>>;
}

const editForm = z.object({
  job: z.string().min(1).max(200),
  field: z.string().refine((field) => editableFields.includes(field)),
  text: z.string().max(20_000),
  reason: z.string().trim().max(2_000),
  by: z.string().trim().max(100),
});

export async function setField(_previous: EditState, form: FormData): Promise<EditState> {
  const person = await mayDo("jobs.change");
  form.set("by", person.name);
  const read = editForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { problems: [{ text: "The form did not arrive whole. Load this page again." }], texts: {} };
  const { job, field, text, reason, by } = read.data;
  const texts = { text, reason, by };
  const missing: FieldProblem[] = [
    ...(reason === "" ? [{ field: "reason", text: "Why is blank. Write what shows it." }] : []),
    ...(by === "" ? [{ field: "by", text: "Your name is blank. It stands in the history." }] : []),
  ];
  if (missing.length > 0) return { problems: missing, texts };
  const result = await editJobField({ jobNumber: job, field, text, by, reason });
  switch (result.kind) {
    case "no such job":
      return { problems: [{ text: `Job ${job} is no longer on file.` }], texts };
    case "same":
      return { problems: [{ field: "text", text: "It says that already." }], texts };
    case "problems":
      return {
        problems: result.problems.map(({ column, problem, fix }) => ({
          ...(column === field ? { field: "text" } : {}),
          text: `${fieldInWords(column)} ${problem}. ${fix}`,
        })),
        texts,
      };
    case "edited": {
      const path = `/jobs/${encodeURIComponent(job)}`;
      revalidatePath(path, "layout");
      redirect(`${path}/edit?kept=${field}`);
    }
  }
}
