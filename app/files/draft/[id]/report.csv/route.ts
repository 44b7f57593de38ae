import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { Readable } from "node:stream";
import { problem } from "@/app/_http/problem";
import { mayCall } from "@/app/_people/may-call";
import { openDraft } from "../../../_draft/open-draft";
import { reportOf } from "../../../uploads";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

/** The rows with problems, with their columns untouched, as the last check wrote them. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "GET /files/draft/[id]/report.csv");
  if (!caller.ok) return caller.response;
  const draft = await openDraft((await params).id);
  const path = draft === undefined ? undefined : reportOf(draft.draftId);
  const bytes =
    path === undefined
      ? undefined
      : await stat(path).then(
          ({ size }) => size,
          () => undefined,
        );
  if (path === undefined || bytes === undefined)
    return problem(404, "Not found", "There is no report: the file was added or dropped, or has no problems.");
  const body = Readable.toWeb(createReadStream(path)) as ReadableStream<Uint8Array>; // the same stream, as the web names it
  return new Response(body, {
    headers: {
      "Content-Type": "text/csv; charset=utf-8",
      "Content-Length": String(bytes),
      "Content-Disposition": 'attachment; filename="rows-with-problems.csv"',
      "Cache-Control": "no-store",
    },
  });
}
