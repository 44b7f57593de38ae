import { loadClaim } from "@/app/_claims/load-claim";
import { packetPdf } from "@/app/_claims/packet-pdf";
import { problem } from "@/app/_http/problem";
import { readOnly } from "@/db/client";
import { loadAttachment } from "@/db/queries/attachment";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly claim: string }>;
}

/** The packet in one file; `?paper=letter` for Letter, A4 otherwise. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const number = decodeURIComponent((await params).claim);
  const found = await readOnly(async (db) => {
    const open = await loadClaim(db, number);
    if (open?.packet === undefined) return undefined;
    const photos = new Map<string, Buffer>();
    for (const { id } of open.packet.photos) {
      const stored = await loadAttachment(db, open.row.jobNumber, id);
      if (stored !== undefined) photos.set(id, stored.content);
    }
    return { packet: open.packet, photos };
  });
  if (found === undefined) return problem(404, "Not found", `There is no open claim ${number} with a packet.`);
  const paper = new URL(request.url).searchParams.get("paper") === "letter" ? "LETTER" : "A4";
  const pdf = await packetPdf(found.packet, found.photos, {
    paper,
    createdAt: new Date(`${found.packet.cover.preparedOn}T00:00:00Z`),
  });
  return new Response(new Uint8Array(pdf), {
    headers: {
      "Content-Type": "application/pdf",
      "Content-Disposition": `attachment; filename="claim-${number.replaceAll(/[^A-Za-z0-9-]/g, "")}.pdf"`,
      "Cache-Control": "no-store",
    },
  });
}
