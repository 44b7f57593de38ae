import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { loadVisits } from "../load-visits";

export const dynamic = "force-dynamic";

/** The view of the same address as a file. */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /repeats/visits/visits.csv");
  if (!caller.ok) return caller.response;
  const view = await loadVisits(Object.fromEntries(new URL(request.url).searchParams));
  const by = view?.question.by ?? ["type"];
  const header = [
    ...by,
    "closed_jobs",
    "first_visit",
    "of",
    "share",
    "low",
    "high",
    "returned_to",
    "of_jobs",
    "share_returned",
    "low_returned",
    "high_returned",
  ];
  const rows = (view?.rows ?? []).map(({ names, jobs, firstVisit: first, calledBack: back }) => [
    ...names,
    jobs,
    first?.events,
    first?.trials,
    first?.point,
    first?.low,
    first?.high,
    back?.events,
    back?.trials,
    back?.point,
    back?.low,
    back?.high,
  ]);
  return csvResponse(`first-visits-by-${by.join("-")}.csv`, header, rows);
}
