import { packetRun } from "@/app/_claims/packet-runs";
import { problem } from "@/app/_http/problem";
import { mayCall } from "@/app/_people/may-call";

export const dynamic = "force-dynamic";

/** `{ done, total }` of the download that was started under this name. */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /claims/packets.zip/progress");
  if (!caller.ok) return caller.response;
  const run = packetRun(new URL(request.url).searchParams.get("run") ?? "");
  if (run === undefined) return problem(404, "Not found", "No download of that name is known here.");
  return Response.json(run, { headers: { "Cache-Control": "no-store" } });
}
