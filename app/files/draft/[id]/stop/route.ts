import { mayCall } from "@/app/_people/may-call";
import { stopWork } from "../../../_work/file-work";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** Ends the work on a draft. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "POST /files/draft/[id]/stop");
  if (!caller.ok) return caller.response;
  stopWork((await params).id);
  return new Response(null, { status: 204 });
}
