import { jobRecordsSchema } from "@/lib/intake/records/job-records-schema";
import { mostJobs } from "../_request/limits";

export const dynamic = "force-static";

/** The JSON Schema of the body of `POST /api/jobs`. */
export function GET(): Response {
  return new Response(JSON.stringify(jobRecordsSchema(mostJobs), undefined, 2), {
    headers: { "Content-Type": "application/schema+json" },
  });
}
