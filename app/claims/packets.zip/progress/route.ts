import { packetRun } from "@/app/_claims/packet-runs";
import { problem } from "@/app/_http/problem";

export const dynamic = "force-dynamic";

/** `{ done, total }` of the download that was started under this name. */
export function GET(request: Request): Response {
  const run = packetRun(new URL(request.url).searchParams.get("run") ?? "");
  if (run === undefined) return problem(404, "Not found", "No download of that name is known here.");
  return Response.json(run, { headers: { "Cache-Control": "no-store" } });
}
