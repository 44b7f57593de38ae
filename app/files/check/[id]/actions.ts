"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { loadFile } from "@/db/writes/load-file";
import { dropUpload, findUpload } from "../../uploads";

const addForm = z.object({ upload: z.uuid(), mode: z.enum(["add", "add and set aside"]) });

export interface AddState {
  readonly problem: string | undefined;
}

/** Adds a checked file: whole, or its good rows. Checked anew, since the data may have changed meanwhile. */
export async function addFile(_previous: AddState, form: FormData): Promise<AddState> {
  const read = addForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { problem: "The form did not arrive whole. Choose the file again." };
  const upload = await findUpload(read.data.upload);
  if (upload === undefined)
    return { problem: "This file is no longer waiting. Choose it again; what was added already is not added twice." };
  const result = await loadFile({ path: upload.path, fileName: upload.fileName, mode: read.data.mode });
  if (result.kind !== "added" && result.kind !== "loaded before")
    return { problem: "The data changed since the check. Load this page again to see what would happen now." };
  await dropUpload(upload.id);
  redirect(`/files/${result.batchId}`);
}
