import { problem } from "@/app/_http/problem";
import { formatBytes } from "@/lib/format/format-bytes";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import type { PointedProblem } from "@/lib/intake/records/read-job-records";
import { longestKey, mostBytes, mostJobs } from "./limits";

/** Where each problem is explained. */
const explained = (anchor: string) => ({ type: `/files/sending#${anchor}` });

/** Everything that `POST /api/jobs` can refuse, each with what to do. */
export const refusals = {
  noKey: () =>
    problem(401, "No key", "Send the header Authorization: Bearer and a key. Keys are made at /files/keys.", {
      ...explained("keys"),
      headers: { "WWW-Authenticate": "Bearer" },
    }),
  unknownKey: () =>
    problem(
      401,
      "This key is not in use",
      "It was ended, has run out, or was never made. Make another at /files/keys.",
      {
        ...explained("keys"),
        headers: { "WWW-Authenticate": 'Bearer error="invalid_token"' },
      },
    ),
  otherScope: () =>
    problem(
      403,
      "This key is for something else",
      "It does not let its program send jobs. Make one that does at /files/keys.",
      {
        ...explained("keys"),
        headers: { "WWW-Authenticate": 'Bearer error="insufficient_scope"' },
      },
    ),
  noIdempotencyKey: () =>
    problem(
      400,
      "No Idempotency-Key",
      `Send the header Idempotency-Key with a text of your own, up to ${longestKey} characters, new for each request: sent again with the same text and body, the request is answered and not done twice.`,
      explained("twice"),
    ),
  notJson: (why: string) => problem(400, "The body is not JSON", `${why} Send JSON in UTF-8.`, explained("body")),
  otherType: () =>
    problem(415, "The body is not called JSON", "Send the header Content-Type: application/json.", explained("body")),
  tooLarge: (what: string) =>
    problem(
      413,
      "The request is too large",
      `${what} A request holds up to ${formatBytes(mostBytes)} and ${formatCount(mostJobs)} jobs. Send several, or load a file.`,
      explained("limits"),
    ),
  stillRunning: (seconds: number) =>
    problem(
      409,
      "The same request is still being worked on",
      "Wait a moment and send it again with the same Idempotency-Key: it is then answered, not done twice.",
      { ...explained("twice"), headers: { "Retry-After": String(seconds) } },
    ),
  otherBody: () =>
    problem(
      422,
      "This Idempotency-Key came with another body before",
      "Nothing was changed. Use a new Idempotency-Key for each new body.",
      explained("twice"),
    ),
};

/** The problems of a document, as members of a problem document. */
export function refusedRows(problems: readonly PointedProblem[]) {
  return {
    type: "/files/sending#problems",
    title: "Some places need correcting",
    status: 422,
    detail: `Nothing was added: ${formatCounted(problems.length, "place needs", "places need")} correcting. Correct them and send the whole again with a new Idempotency-Key.`,
    problems,
  };
}
