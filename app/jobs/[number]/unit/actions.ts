"use server";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import type { FieldProblem } from "@/app/_ui/error-summary";
import { type JoinResult, joinJobToUnit } from "@/db/writes/joining/join-job-to-unit";
import { undoJobJoin } from "@/db/writes/joining/undo-job-join";
import { parsedJson } from "@/lib/format/parsed-json";

export interface JoinState {
  readonly problems: readonly FieldProblem[];
  /** What was typed, shown again while something is wrong. */
  readonly texts: Readonly<Record<string, string>>;
}

const jobNumber = z.string().min(1).max(200);
const unit = z.tuple([z.string().min(1).max(200), z.string().min(1).max(200)]);

export async function joinUnit(_previous: JoinState, form: FormData): Promise<JoinState> {
  const person = await mayDo("jobs.change");
  form.set("by", person.name);
  const texts = Object.fromEntries(["unit", "reason", "by"].map((name) => [name, String(form.get(name) ?? "").trim()]));
  const job = jobNumber.parse(form.get("job"));
  const { reason = "", by = "" } = texts;
  const chosen = unit.safeParse(parsedJson(texts.unit ?? ""));
  const problems: FieldProblem[] = [
    ...(chosen.success ? [] : [{ field: "unit", text: "No unit is chosen. Choose the one that the job was done on." }]),
    ...(reason === "" ? [{ field: "reason", text: "What shows it is blank." }] : []),
    ...(by === "" ? [{ field: "by", text: "Your name is blank. It stands in the history." }] : []),
  ];
  if (!chosen.success || problems.length > 0) return { problems, texts };
  const [maker, serial] = chosen.data;
  const result = await joinJobToUnit({ jobNumber: job, maker, serial, by, reason });
  if (result.kind !== "joined") return { problems: [{ text: refusal(result) }], texts };
  const path = `/jobs/${encodeURIComponent(job)}`;
  revalidatePath(path, "layout");
  redirect(`${path}/unit`);
}

/** The job goes back to the unit of its own that it came on. */
export async function undoJoin(form: FormData): Promise<void> {
  await mayDo("jobs.change");
  const job = jobNumber.parse(form.get("job"));
  const { kind } = await undoJobJoin(job);
  const path = `/jobs/${encodeURIComponent(job)}`;
  revalidatePath(path, "layout");
  redirect(`${path}/unit${kind === "claim sent" ? "?said=sent" : ""}`);
}

function refusal(result: Exclude<JoinResult, { kind: "joined" }>): string {
  switch (result.kind) {
    case "no such job":
      return "The job is no longer on file.";
    case "no such unit":
      return "The unit is no longer on file.";
    case "has a serial":
      return `The job has a serial by now: ${result.serial}.`;
    case "claim sent":
      return "A claim on this job was sent, and names the unit as it was. Withdraw it first.";
    case "other kind of appliance":
      return `The job is on a ${result.job.replaceAll("_", " ")}, that unit is a ${result.unit.replaceAll("_", " ")}.`;
  }
}
