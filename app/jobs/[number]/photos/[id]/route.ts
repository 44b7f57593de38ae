import { problem } from "@/app/_http/problem";
import { mayCallOnJob } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { loadAttachment } from "@/db/queries/attachment";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly number: string; readonly id: string }>;
}

/** The stored picture or paper: re-encoded when it came in, never the bytes that were received. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const jobNumber = decodeURIComponent((await params).number);
  const caller = await mayCallOnJob(request, "GET /jobs/[number]/photos/[id]", jobNumber);
  if (!caller.ok) return caller.response;
  const { number, id } = await params;
  const found = await readOnly((db) => loadAttachment(db, decodeURIComponent(number), id));
  if (found === undefined) return problem(404, "Not found", "This job has no picture or paper of that number.");
  return new Response(new Uint8Array(found.content), {
    headers: {
      "Content-Type": found.mediaType,
      "Content-Disposition":
        found.mediaType === "application/pdf" ? `attachment; filename="paper-${id}.pdf"` : "inline",
      // Whatever is in it, it may do nothing here.
      "Content-Security-Policy": "default-src 'none'; sandbox",
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store", // a receipt names the customer, and the next person at this browser may be another
    },
  });
}
