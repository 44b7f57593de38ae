import { problem } from "@/app/_http/problem";
import { fromElsewhere } from "@/app/sheet/_http/from-this-site";
import { readOnly } from "@/db/client";
import { loadSheetJob } from "@/db/queries/sheet-job";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly number: string }>;
}

/** The complaint by itself and not to be stored: it is the one text of a job that may name the customer. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const refusal = fromElsewhere(request);
  if (refusal !== undefined) return refusal;
  const jobNumber = decodeURIComponent((await params).number);
  const job = await readOnly((db) => loadSheetJob(db, jobNumber));
  if (job === undefined) return problem(404, "Not found", `There is no job ${jobNumber}.`);
  return Response.json({ complaint: job.complaint }, { headers: { "Cache-Control": "no-store" } });
}
