"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { mayDoOnJob } from "@/app/_people/may-do";
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
  await mayDoOnJob("sheets.answer", String(data.get("job"))); // a form of one's own job can be sent with another's number
  const read = form.safeParse(Object.fromEntries(data));
  if (!read.success) return;
  const { job: jobNumber, ...answer } = read.data;
  await answerAsk({ jobNumber, ...answer });
  revalidatePath(`/sheet/asked/${encodeURIComponent(jobNumber)}`);
}
