import type { OutboxItem } from "./device-store";

/** `signed out`: the session is over. `somebody else`: another person is signed in than the one who made it. */
export type WhyLater = "no signal" | "the server did not answer" | "signed out" | "somebody else";

export type SendOutcome =
  | { readonly kind: "sent" }
  /** To be tried again; `isLineDown` where others would not get through either. */
  | { readonly kind: "later"; readonly why: WhyLater; readonly isLineDown: boolean }
  | { readonly kind: "refused"; readonly sentence: string };

/** A photo over a weak signal takes its time. */
const patienceMilliseconds = 30_000;

export async function sendItem(item: OutboxItem): Promise<SendOutcome> {
  let response: Response;
  try {
    response = await fetch(addressOf(item), { method: "POST", ...bodyOf(item), signal: patience() });
  } catch {
    const why = navigator.onLine ? "the server did not answer" : "no signal";
    return { kind: "later", why, isLineDown: true };
  }
  if (response.ok) return { kind: "sent" };
  if (response.status >= 500 || laterStatuses.has(response.status))
    return { kind: "later", why: "the server did not answer", isLineDown: false };
  const problem: unknown = await response.json().catch(() => undefined);
  if (response.status === 401) {
    const isOther = typeOf(problem) === "/sheet#other-person";
    return { kind: "later", why: isOther ? "somebody else" : "signed out", isLineDown: !isOther };
  }
  return { kind: "refused", sentence: sentenceOf(problem) ?? `The server refused it (${response.status}).` };
}

/** Too slow, still running, too early, too often: none of them says anything about the item. */
const laterStatuses: ReadonlySet<number> = new Set([408, 409, 425, 429]);

function patience(): AbortSignal {
  const stop = new AbortController();
  setTimeout(() => stop.abort(), patienceMilliseconds);
  return stop.signal;
}

function addressOf({ job, load }: OutboxItem): string {
  const place = { answer: "answers", photo: "photos", close: "close" }[load.kind];
  return `/sheet/job/${encodeURIComponent(job)}/${place}`;
}

function bodyOf({ id, load, person }: OutboxItem): Pick<RequestInit, "body" | "headers"> {
  const headers = {
    Accept: "application/json",
    "Idempotency-Key": id,
    ...(person === undefined ? {} : { "Ohmsworth-Person": person }),
  };
  if (load.kind !== "photo")
    return {
      body: JSON.stringify(load.kind === "answer" ? load.answer : load.body),
      headers: { ...headers, "Content-Type": "application/json" },
    };
  const form = new FormData();
  form.set("id", id);
  form.set("subject", load.subject);
  if (load.check !== undefined) form.set("check", load.check);
  form.set("file", new Blob([load.bytes], { type: load.type }), "photo");
  return { body: form, headers };
}

function typeOf(problem: unknown): unknown {
  return typeof problem === "object" && problem !== null && "type" in problem ? problem.type : undefined;
}

function sentenceOf(problem: unknown): string | undefined {
  if (typeof problem !== "object" || problem === null) return undefined;
  const { detail, errors } = problem as { readonly detail?: unknown; readonly errors?: unknown }; // read below by kind
  if (Array.isArray(errors) && errors.length > 0) return errors.map((each) => String(each?.detail ?? each)).join(" ");
  return typeof detail === "string" ? detail : undefined;
}
