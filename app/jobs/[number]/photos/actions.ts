"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { bringBack, removeAttachment } from "@/db/writes/photos/remove-attachment";

const photoForm = z.object({ job: z.string().min(1).max(200), id: z.string().regex(/^\d{1,19}$/) });

export interface PhotoActState {
  readonly said: string;
  /** The photo that can be brought back. */
  readonly undo: string | undefined;
}

/** Takes a photo off, or brings it back, by which button was pressed. */
export async function changePhoto(_previous: PhotoActState, form: FormData): Promise<PhotoActState> {
  const person = await mayDo("jobs.change");
  const read = photoForm.safeParse(Object.fromEntries(form));
  if (!read.success) return say("The form did not arrive whole. Open the job again.");
  const { job: jobNumber, id } = read.data;
  const state = form.get("act") === "back" ? await back(jobNumber, id) : await takeOff(jobNumber, id, person.name);
  revalidatePath(`/jobs/${encodeURIComponent(jobNumber)}`);
  return state;
}

async function takeOff(jobNumber: string, id: string, by: string): Promise<PhotoActState> {
  const removed = await removeAttachment({ jobNumber, id }, by);
  switch (removed.kind) {
    case "removed":
      return say("Taken off. It can be brought back for 30 days.", id);
    case "not there":
      return say("It was taken off already.", id);
    case "sent with a claim":
      return say(`It went to the payer with claim ${removed.claimNumber}, so it stays.`);
  }
}

async function back(jobNumber: string, id: string): Promise<PhotoActState> {
  return say(
    (await bringBack({ jobNumber, id })) ? "Brought back." : "It can no longer be brought back. Add it again.",
  );
}

function say(said: string, undo?: string): PhotoActState {
  return { said, undo };
}
