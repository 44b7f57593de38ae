"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { dropDraft } from "./_draft/open-draft";
import { stopWork } from "./_work/file-work";
import { dropUpload } from "./uploads";

const dropForm = z.object({ draft: z.uuid() });

/** Gives up a file that is not yet added; nothing of it was. */
export async function dropFile(form: FormData): Promise<void> {
  await mayDo("files.load");
  const { draft } = dropForm.parse(Object.fromEntries(form));
  stopWork(draft);
  await dropDraft(draft);
  await dropUpload(draft);
  revalidatePath("/files");
}
