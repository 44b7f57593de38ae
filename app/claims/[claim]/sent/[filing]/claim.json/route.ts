import { mayCall } from "@/app/_people/may-call";
import { createHash } from "node:crypto";
import { problem } from "@/app/_http/problem";
import { readOnly } from "@/db/client";
import { loadSentBytes } from "@/db/queries/claim-life";
import { claimFileName } from "@/lib/claims/claim-file-name";
import { readSentText } from "@/lib/claims/life/sent-content";
import { canonicalJson } from "@/lib/claims/neutral/canonical-json";

interface Context {
  readonly params: Promise<{ readonly claim: string; readonly filing: string }>;
}

/** The claim for other programs as it was sent, taken out of the bytes that were kept. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "GET /claims/[claim]/sent/[filing]/claim.json");
  if (!caller.ok) return caller.response;
  const { claim, filing } = await params;
  const number = decodeURIComponent(claim);
  const sent = /^\d{1,4}$/.test(filing) ? await readOnly((db) => loadSentBytes(db, number, Number(filing))) : undefined;
  if (sent === undefined) return problem(404, "Not found", "Nothing was sent under this number.");
  const kept = readSentText(sent.content.toString("utf8")).claim;
  if (kept === undefined)
    return problem(404, "Not kept", "This filing was kept before claims for other programs were: take its packet.");
  const text = canonicalJson(kept);
  return new Response(text, {
    headers: {
      "Content-Type": "application/json",
      "Content-Disposition": `attachment; filename="${claimFileName(number)}-sent-${filing}.json"`,
      Link: '</claims/claim-schema.json>; rel="describedby"',
      ETag: `"${createHash("sha256").update(text).digest("hex")}"`,
      "Cache-Control": "private, no-store",
    },
  });
}
