import { mayCall } from "@/app/_people/may-call";
import { createHash } from "node:crypto";
import { loadPacketFile } from "@/app/_claims/load-packet-file";
import { problem } from "@/app/_http/problem";
import { readOnly } from "@/db/client";
import { claimFileName } from "@/lib/claims/claim-file-name";
import { canonicalJson } from "@/lib/claims/neutral/canonical-json";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly claim: string }>;
}

/** The claim for other programs, by /claims/claim-schema.json; equal claims are equal to the byte. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "GET /claims/[claim]/claim.json");
  if (!caller.ok) return caller.response;
  const number = decodeURIComponent((await params).claim);
  const found = await readOnly((db) => loadPacketFile(db, number));
  if (found.kind === "none") return problem(404, "Not found", found.sentence);
  const text = canonicalJson(found.neutral);
  return new Response(text, {
    headers: {
      "Content-Type": "application/json",
      "Content-Disposition": `attachment; filename="${claimFileName(number)}.json"`,
      Link: '</claims/claim-schema.json>; rel="describedby"',
      ETag: `"${createHash("sha256").update(text).digest("hex")}"`,
      "Cache-Control": "no-store",
    },
  });
}
