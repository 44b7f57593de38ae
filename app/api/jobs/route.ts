import { actAs } from "@/db/actor";
import { answerOnce, type StoreAnswer, type StoredAnswer } from "@/db/writes/answer-once";
import { recogniseApiKey } from "@/db/writes/api-keys";
import { loadRecords } from "@/db/writes/load-records";
import { type JobRecords, readJobRecords } from "@/lib/intake/records/read-job-records";
import { answerOf } from "./_request/answer-of";
import { longestKey, mostBytes, mostJobs } from "./_request/limits";
import { refusals, refusedRows } from "./_request/problems";
import { readBody } from "./_request/read-body";

export const dynamic = "force-dynamic";

/** Takes closed jobs of another program, with their part lines and readings: all of a request, or nothing of it, and once. */
export async function POST(request: Request): Promise<Response> {
  const bearer = /^Bearer\s+(\S+)$/i.exec(request.headers.get("authorization") ?? "")?.[1];
  if (bearer === undefined) return refusals.noKey();
  const sender = await recogniseApiKey(bearer);
  if (sender === undefined) return refusals.unknownKey();
  if (sender.scope !== "jobs") return refusals.otherScope();
  actAs(sender.name);
  const key = request.headers.get("idempotency-key")?.trim() ?? "";
  if (key === "" || key.length > longestKey) return refusals.noIdempotencyKey();
  if (!/^application\/(?:[\w.+-]+\+)?json\b/i.test(request.headers.get("content-type") ?? ""))
    return refusals.otherType();
  const body = await readBody(request, mostBytes);
  if (body.kind === "too large") return refusals.tooLarge("It is longer than that.");
  if (body.kind === "not UTF-8") return refusals.notJson("It holds bytes that are no UTF-8.");
  const document = parsed(body.text);
  if (document === undefined) return refusals.notJson("It can’t be parsed.");
  if (jobsIn(document.value) > mostJobs) return refusals.tooLarge(`It holds ${jobsIn(document.value)} jobs.`);
  const once = await answerOnce({ route: `POST /api/jobs ${sender.keyId}`, key, bodyHash: body.sha256 }, (store) =>
    answer(readJobRecords(document.value), sender.name, store),
  );
  if (once.kind === "running") return refusals.stillRunning(once.retryAfterSeconds);
  return once.kind === "other body" ? refusals.otherBody() : toResponse(once.answer);
}

async function answer(read: JobRecords, sender: string, store: StoreAnswer): Promise<StoredAnswer> {
  if (!read.ok) return { status: 422, body: refusedRows(read.problems) };
  const { records } = read;
  const result = await loadRecords({
    records,
    sender,
    mode: "add",
    within: async (tx, outcome) => store(tx, answerOf(outcome, records)),
  });
  return answerOf(result, records);
}

function toResponse({ status, body }: StoredAnswer): Response {
  const type = status < 400 ? "application/json" : "application/problem+json";
  return new Response(JSON.stringify(body), { status, headers: { "Content-Type": type, "Cache-Control": "no-store" } });
}

function parsed(text: string): { readonly value: unknown } | undefined {
  try {
    return { value: JSON.parse(text) };
  } catch {
    return undefined;
  }
}

function jobsIn(document: unknown): number {
  const jobs = typeof document === "object" && document !== null && "jobs" in document ? document.jobs : undefined;
  return Array.isArray(jobs) ? jobs.length : 0;
}
