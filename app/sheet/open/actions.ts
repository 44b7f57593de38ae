"use server";
import { redirect } from "next/navigation";
import { mayDo } from "@/app/_people/may-do";
import { openJob } from "@/db/writes/sheets/open-job";
import { openJobForm } from "./open-job-form";

export interface OpenState {
  readonly values: Readonly<Record<string, string>>;
  readonly problems: Readonly<Record<string, string>>;
}

export async function submitOpenJob(_previous: OpenState, data: FormData): Promise<OpenState> {
  await mayDo("sheets.open");
  const values = Object.fromEntries(
    [...data].flatMap(([name, value]) => (typeof value === "string" ? [[name, value]] : [])),
  );
  const read = openJobForm.safeParse(values);
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
