import { problem } from "@/app/_http/problem";
import { mayCallOnJob } from "@/app/_people/may-call";
import { readJson } from "@/app/sheet/_http/from-this-site";
import { keepAnswer } from "@/db/writes/sheets/keep-answer";
import { parseAnswer } from "@/lib/sheets/parse-answer";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly number: string }>;
}

/** Takes one answer of a phone. The answer's own id makes it once, however often it comes. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const jobNumber = decodeURIComponent((await params).number);
  const caller = await mayCallOnJob(request, "POST /sheet/job/[number]/answers", jobNumber);
  if (!caller.ok) return caller.response;
  const read = await readJson(request);
  if (!read.ok) return read.response;
  const parsed = parseAnswer(read.body);
  if (!parsed.ok) {
    const errors = parsed.problems.map(({ at, sentence }) => ({
      pointer: `/${at.replaceAll(".", "/")}`,
      detail: sentence,
    }));
    return problem(422, "The answer was not taken", parsed.problems.map(({ sentence }) => sentence).join("; "), {
      members: { errors },
    });
  }
  const kept = await keepAnswer(jobNumber, parsed.answer);
  switch (kept.kind) {
    case "kept":
    case "here already":
      return Response.json({ said: kept.kind }, { headers: { "Cache-Control": "no-store" } });
    case "other answer":
      return problem(
        422,
        "Another answer has this id",
        "An answer with this id is here and says something else. Nothing was changed.",
      );
    case "no such check":
      return problem(
        422,
        "The answer was not taken",
        `No sheet of job ${jobNumber} has the check ${parsed.answer.check}.`,
      );
    case "no such job":
      return problem(404, "Not found", `There is no job ${jobNumber}.`);
  }
}
