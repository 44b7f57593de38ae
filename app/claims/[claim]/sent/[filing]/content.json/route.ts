import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { loadSentBytes } from "@/db/queries/claim-life";

interface Context {
  readonly params: Promise<{ readonly claim: string; readonly filing: string }>;
}

/** Exactly the bytes that were kept when the claim was sent: their SHA-256 is the fingerprint. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "GET /claims/[claim]/sent/[filing]/content.json");
  if (!caller.ok) return caller.response;
  const { claim, filing } = await params;
  const number = decodeURIComponent(claim);
  const sent = /^\d{1,4}$/.test(filing)
    ? await readOnly((db) => loadSentBytes(db, number, Number(filing)))
    : undefined;
  if (sent === undefined) return new Response("Nothing was sent under this number.\n", { status: 404 });
  const name = `${number.replaceAll(/[^\w-]/g, "-")}-sent-${filing}.json`;
  return new Response(new Uint8Array(sent.content), {
    headers: {
      "content-type": "application/json; charset=utf-8",
      "content-disposition": `attachment; filename="${name}"`,
      "cache-control": "private, no-store",
    },
  });
}
