import { z } from "zod";
import { problem } from "@/app/_http/problem";
import { mayCallOnJob } from "@/app/_people/may-call";
import { fromElsewhere, readJson } from "@/app/sheet/_http/from-this-site";
import { readOnly } from "@/db/client";
import { loadSheetJob } from "@/db/queries/sheet-job";
import { setComplaint } from "@/db/writes/sheets/set-complaint";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly number: string }>;
}

/** The complaint by itself and not to be stored: it is the one text of a job that may name the customer. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const jobNumber = decodeURIComponent((await params).number);
  const caller = await mayCallOnJob(request, "GET /sheet/job/[number]/complaint", jobNumber);
  if (!caller.ok) return caller.response;
  const refusal = fromElsewhere(request);
  if (refusal !== undefined) return refusal;
  const job = await readOnly((db) => loadSheetJob(db, jobNumber));
  if (job === undefined) return problem(404, "Not found", `There is no job ${jobNumber}.`);
  return Response.json({ complaint: job.complaint }, { headers: { "Cache-Control": "no-store" } });
}

const body = z.object({
  complaint: z
    .string()
    .max(5_000)
    .transform((text) => text.replaceAll(/[^\P{Cc}\n]+/gu, " ").trim()),
});

/** The complaint as the technician heard it, sent by itself while there is signal, so that it never waits on a phone. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const jobNumber = decodeURIComponent((await params).number);
  const caller = await mayCallOnJob(request, "POST /sheet/job/[number]/complaint", jobNumber);
  if (!caller.ok) return caller.response;
  const sent = await readJson(request);
  if (!sent.ok) return sent.response;
  const read = body.safeParse(sent.body);
  if (!read.success)
    return problem(422, "The complaint was not taken", "The complaint is longer than 5,000 characters.");
  if (!(await setComplaint(jobNumber, read.data.complaint)))
    return problem(404, "Not found", `There is no open job ${jobNumber}.`);
  return Response.json({ said: "kept" }, { headers: { "Cache-Control": "no-store" } });
}
