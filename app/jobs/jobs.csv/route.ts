import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { loadJobList } from "@/db/queries/job-list";
import { readJobFilter } from "../read-job-filter";

export const dynamic = "force-dynamic";

const header = [
  "job_number",
  "completed_on",
  "status",
  "maker",
  "model",
  "serial",
  "complaint",
  "symptom",
  "component",
  "cause",
  "counted_as",
  "fault_codes",
  "part_lines",
  "readings",
  "technician",
  "payer",
];

/** Every job of the view of the same address. */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /jobs/jobs.csv");
  if (!caller.ok) return caller.response;
  const { filter } = readJobFilter(Object.fromEntries(new URL(request.url).searchParams));
  const list = await readOnly((db) => loadJobList(db, filter, { offset: 0, limit: undefined }));
  const rows = list.rows.map((row) => [
    row.jobNumber,
    row.completedOn,
    row.status,
    row.maker,
    row.model,
    row.serial,
    row.complaint,
    row.symptom,
    row.component,
    row.cause,
    row.countedAs,
    row.faultCodes.join(" "),
    row.parts,
    row.readings,
    row.technician,
    row.payer,
  ]);
  return csvResponse("jobs.csv", header, rows);
}
