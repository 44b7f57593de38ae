"use server";
import { redirect } from "next/navigation";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { openJob } from "@/db/writes/sheets/open-job";
import { readDay } from "@/lib/calendar/day";
import { payerKinds } from "@/lib/domain/job";
import { symptomOf } from "@/lib/domain/symptoms";

export interface OpenState {
  readonly values: Readonly<Record<string, string>>;
  readonly problems: Readonly<Record<string, string>>;
}

const text = (most: number) =>
  z
    .string()
    .max(most, `Longer than ${most} characters.`)
    .transform((value) => value.replaceAll(/[^\P{Cc}\n]+/gu, " ").trim());
const optional = (most: number) => text(most).transform((value) => (value === "" ? undefined : value));

const form = z.object({
  jobNumber: text(60).pipe(z.string().min(1, "Give the job a number.")),
  serial: text(60).pipe(z.string().min(1, "Type the serial from the rating plate.")),
  symptom: z.string().refine((key) => symptomOf(key) !== undefined, "Choose what the customer notices."),
  complaint: text(5_000),
  requestedOn: z.string().transform((value, context) => {
    const day = readDay(value);
    if (day === undefined) context.addIssue("Choose the day on which the customer asked for it.");
    return day ?? z.NEVER;
  }),
  technician: optional(200),
  payer: z.enum(payerKinds, "Choose who is meant to pay."),
  callbackOf: optional(60),
});

export async function submitOpenJob(_previous: OpenState, data: FormData): Promise<OpenState> {
  await mayDo("sheets.open");
  const values = Object.fromEntries(
    [...data].flatMap(([name, value]) => (typeof value === "string" ? [[name, value]] : [])),
  );
  const read = form.safeParse(values);
  if (!read.success)
    return {
      values,
      problems: Object.fromEntries(read.error.issues.map(({ path, message }) => [String(path[0]), message])),
    };
  const opened = await openJob(read.data);
  const refuse = (field: string, sentence: string): OpenState => ({ values, problems: { [field]: sentence } });
  switch (opened.kind) {
    case "number is taken":
      return refuse("jobNumber", "A job with this number is here already.");
    case "no such serial":
      return refuse(
        "serial",
        "No unit with this serial is on file. Check it against the plate, or load the unit first.",
      );
    case "several units":
      return refuse(
        "serial",
        `Units of ${opened.makers.join(" and ")} have this serial. Open the job at the unit that is meant.`,
      );
    case "no such symptom":
      return refuse("symptom", "This kind of machine does not have this symptom. Choose another.");
    case "no such earlier job":
      return refuse("callbackOf", "This unit has no job of that number.");
    case "opened":
      redirect(`/sheet/job/${encodeURIComponent(read.data.jobNumber)}`);
  }
}
