import { createHash } from "node:crypto";
import { todayIn } from "@/app/_clock/today";
import { problem } from "@/app/_http/problem";
import { mayCallOnJob } from "@/app/_people/may-call";
import { readJson } from "@/app/sheet/_http/from-this-site";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { answerOnce, type StoredAnswer } from "@/db/writes/answer-once";
import { type ClosedResult, closeJob } from "@/db/writes/sheets/close-job";
import { readClosing } from "./read-closing";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly number: string }>;
}

/** Closes the job once for each Idempotency-Key: sent again it gets the stored answer; with another body it is refused. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const jobNumber = decodeURIComponent((await params).number);
  const caller = await mayCallOnJob(request, "POST /sheet/job/[number]/close", jobNumber);
  if (!caller.ok) return caller.response;
  const key = request.headers.get("idempotency-key")?.trim() ?? "";
  if (key === "" || key.length > 200)
    return problem(
      400,
      "No key",
      "Closing a job needs an Idempotency-Key of up to 200 characters, made by the sender.",
    );
  const sent = await readJson(request);
  if (!sent.ok) return sent.response;
  const read = readClosing(sent.body);
  if (!read.ok) return problem(422, "The job was not closed", read.problems.join("; "));
  const today = todayIn((await readOnly(loadShop)).timeZone);
  const bodyHash = createHash("sha256").update(`${jobNumber}\n${sent.text}`).digest("hex");
  const once = await answerOnce({ route: "close job", key, bodyHash }, async (store) => {
    const done: StoredAnswer = { status: 200, body: { said: "closed" } };
    const result = await closeJob({ ...read.form, jobNumber, today, by: caller.person.name }, store, done);
    return result.kind === "closed" ? done : refused(result, jobNumber);
  });
  switch (once.kind) {
    case "running":
      return problem(409, "Still running", "The same request is being worked on.", {
        headers: { "Retry-After": String(once.retryAfterSeconds) },
      });
    case "other body":
      return problem(422, "The key was used", "This Idempotency-Key came before with another body.");
    case "answered":
      return once.answer.status === 200
        ? Response.json(once.answer.body, { headers: { "Cache-Control": "no-store" } })
        : problem(once.answer.status, "The job was not closed", String(once.answer.body));
  }
}

function refused(result: Exclude<ClosedResult, { readonly kind: "closed" }>, jobNumber: string): StoredAnswer {
  switch (result.kind) {
    case "no such job":
      return { status: 404, body: `There is no open job ${jobNumber}.` };
    case "closed already":
      return {
        status: 422,
        body: `Job ${jobNumber} was closed already. What is on it can be changed at the desk, with a reason.`,
      };
    case "on another unit":
      return {
        status: 422,
        body: `A file has closed job ${jobNumber} meanwhile, on another unit or without its serial. Have the desk join it to this unit, then send it again.`,
      };
    case "no such earlier job":
      return { status: 422, body: "The earlier job that it returns to is not on this unit." };
    case "no price":
      return { status: 422, body: `No price is on file for part ${result.partNumber}. Type what it cost.` };
    case "before request":
      return {
        status: 422,
        body: `Today is before ${result.requestedOn}, the day on which the job was asked for. A clock is wrong: correct it and close the job again.`,
      };
  }
}
