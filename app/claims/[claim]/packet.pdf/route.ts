import { loadPacketFile } from "@/app/_claims/load-packet-file";
import { packetPdf } from "@/app/_claims/packet-pdf";
import { paperAsked } from "@/app/_claims/paper-of";
import { problem } from "@/app/_http/problem";
import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { claimFileName } from "@/lib/claims/claim-file-name";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly claim: string }>;
}

/** The packet in one file; `?paper=letter` or `?paper=a4`, otherwise what the shop's country prints on. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "GET /claims/[claim]/packet.pdf");
  if (!caller.ok) return caller.response;
  const number = decodeURIComponent((await params).claim);
  const found = await readOnly((db) => loadPacketFile(db, number, { withPhotos: true }));
  if (found.kind === "none") return problem(404, "Not found", found.sentence);
  const { packet, photos } = found;
  const paper = paperAsked(new URL(request.url).searchParams.get("paper"), found.paper);
  const createdAt = new Date(`${packet.cover.preparedOn}T00:00:00Z`);
  const pdf = await packetPdf(packet, photos, { paper, createdAt });
  return new Response(new Uint8Array(pdf), {
    headers: {
      "Content-Type": "application/pdf",
      "Content-Disposition": `attachment; filename="${claimFileName(number)}.pdf"`,
      "Cache-Control": "no-store",
    },
  });
}
