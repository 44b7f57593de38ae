import { mayCall } from "@/app/_people/may-call";
import { openDraft } from "../../../_draft/open-draft";
import { onwardFrom } from "../../../_draft/where-it-stands";
import { workOn } from "../../../_work/file-work";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** How far the work on a draft is; or where to go, once it has ended. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "GET /files/draft/[id]/state");
  if (!caller.ok) return caller.response;
  const { id } = await params;
  const work = workOn(id);
  if (work !== undefined) return answer({ progress: work.progress });
  const draft = await openDraft(id);
  return answer({ next: draft === undefined ? "/files" : onwardFrom(draft) });
}

function answer(state: unknown): Response {
  return Response.json(state, { headers: { "Cache-Control": "no-store" } });
}
