"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { answerAsk } from "@/db/writes/sheets/ask-technician";

const form = z.object({
  job: z.string().min(1).max(200),
  item: z.string().min(1).max(200),
  answer: z.enum(["given", "cannot be had"]),
  note: z
    .string()
    .max(500)
    .transform((text) => text.replaceAll(/\p{Cc}+/gu, " ").trim()),
});

export async function answerAsked(data: FormData): Promise<void> {
  await mayDo("sheets.answer");
  const read = form.safeParse(Object.fromEntries(data));
  if (!read.success) return;
  const { job: jobNumber, ...answer } = read.data;
  await answerAsk({ jobNumber, ...answer });
  revalidatePath(`/sheet/asked/${encodeURIComponent(jobNumber)}`);
}
