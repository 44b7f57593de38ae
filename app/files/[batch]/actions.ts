"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { takeBack } from "@/db/writes/take-back";

const takeBackForm = z.object({ batch: z.coerce.number().int().positive() });

/** Takes a whole load back. What stays and why is on the load's page before and after. */
export async function takeLoadBack(form: FormData): Promise<void> {
  await mayDo("files.load");
  const { batch } = takeBackForm.parse(Object.fromEntries(form));
  await takeBack(batch);
  redirect(`/files/${batch}`);
}
