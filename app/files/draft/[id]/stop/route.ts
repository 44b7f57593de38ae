import { problem } from "@/app/_http/problem";
import { stopWork } from "../../../_work/file-work";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** Ends the work on a draft. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const site = request.headers.get("sec-fetch-site");
  if (site !== null && site !== "same-origin")
    return problem(403, "Not from this site", "Work is stopped from this site's own pages only.");
  stopWork((await params).id);
  return new Response(null, { status: 204 });
}
