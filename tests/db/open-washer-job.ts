import { expect } from "vitest";
import { openJob } from "@/db/writes/sheets/open-job";
import { day } from "@/lib/calendar/day";

/** Opens a job on the sheet of unit A1 of the small files, which must be on file. */
export async function openWasherJob(jobNumber: string): Promise<void> {
  const opened = await openJob({
    jobNumber,
    serial: "a-1",
    symptom: "will_not_drain",
    complaint: "Stops with water in it.",
    requestedOn: day("2025-06-20"),
    technician: "Kit",
    payer: "maker",
    callbackOf: undefined,
  });
  expect(opened).toEqual({ kind: "opened" });
}
