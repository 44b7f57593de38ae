import { z } from "zod";
import { readDay } from "@/lib/calendar/day";
import { payerKinds } from "@/lib/domain/job";
import { symptomOf } from "@/lib/domain/symptoms";
import { identifier } from "@/lib/intake/cell-texts";

const clean = z.string().transform((value) => value.replaceAll(/[^\P{Cc}\n]+/gu, " ").trim());
const text = (most: number) => clean.pipe(z.string().max(most, `Longer than ${most} characters.`));

/** A number or a serial: whatever files may hold, since the unit and the job's later rows come by file. */
function readIdentified(value: string, context: z.RefinementCtx): string {
  const read = identifier.read(value);
  if ("value" in read) return read.value;
  context.addIssue(`It ${read.problem}. ${read.fix}`);
  return z.NEVER;
}
const named = (blank: string) => clean.pipe(z.string().min(1, blank)).transform(readIdentified);

/** What is typed to open a job by hand. */
export const openJobForm = z.object({
  jobNumber: named("Give the job a number."),
  serial: named("Type the serial from the rating plate."),
  symptom: z.string().refine((key) => symptomOf(key) !== undefined, "Choose what the customer notices."),
  complaint: text(5_000),
  requestedOn: z.string().transform((value, context) => {
    const day = readDay(value);
    if (day === undefined) context.addIssue("Choose the day on which the customer asked for it.");
    return day ?? z.NEVER;
  }),
  technician: text(200).transform((value) => (value === "" ? undefined : value)),
  payer: z.enum(payerKinds, "Choose who is meant to pay."),
  callbackOf: clean.transform((value, context) => (value === "" ? undefined : readIdentified(value, context))),
});
