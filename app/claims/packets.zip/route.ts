import { loadPacketFile } from "@/app/_claims/load-packet-file";
import { mostPacketClaims } from "@/app/_claims/most-packet-claims";
import { notePacketRun } from "@/app/_claims/packet-runs";
import { packetsZip } from "@/app/_claims/packets-zip";
import { problem } from "@/app/_http/problem";
import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";

export const dynamic = "force-dynamic";

/**
 * The packets of the claims that the address names (`?chosen=C-2025-0001&chosen=…`) in one archive, with all of them as
 * JSON Lines. `?run=` is a name under which /claims/packets.zip/progress tells how far it is.
 */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /claims/packets.zip");
  if (!caller.ok) return caller.response;
  const asked = new URL(request.url).searchParams;
  const numbers = [...new Set(asked.getAll("chosen"))].filter((number) => number !== "" && number.length <= 200);
  if (numbers.length === 0) return problem(400, "No claim chosen", "Choose the claims first.");
  if (numbers.length > mostPacketClaims)
    return problem(
      400,
      "Too many claims",
      `${numbers.length} claims are chosen; up to ${mostPacketClaims} go into one download.`,
    );
  const total = numbers.length;
  const note = noterOf(asked.get("run") ?? "", total);
  note(0);
  const zip = packetsZip(numbers, {
    load: (number) => readOnly((db) => loadPacketFile(db, number, { withPhotos: true })),
    paper: asked.get("paper"),
    onProgress: note,
  });
  return new Response(zip, {
    headers: {
      "Content-Type": "application/zip",
      "Content-Disposition": 'attachment; filename="claim-packets.zip"',
      "Cache-Control": "no-store",
    },
  });
}

function noterOf(run: string, total: number): (done: number) => void {
  if (!/^[\w-]{8,64}$/.test(run)) return () => undefined;
  return (done) => notePacketRun(run, { done, total });
}
