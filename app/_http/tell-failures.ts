import { randomUUID } from "node:crypto";
import { subscribe } from "node:diagnostics_channel";
import type { IncomingMessage, ServerResponse } from "node:http";
import { routeActs } from "@/app/_people/route-acts";
import { addressPattern } from "./address-pattern";

/** By which name an answer says in the log which failure it was. */
export const failureHeader = "ohmsworth-failure";

const routes = Object.keys(routeActs).map((key) => {
  const [method = "", path = ""] = key.split(" ");
  return { method, path: addressPattern(path) };
});

/**
 * From now on an address for programs that fails says so as application/problem+json (RFC 9457): that it failed, whether
 * to try again, and a code that is in the log too; nothing of the inside. The web server itself answers such a failure
 * with status 500 and no word. Pages have their own sentence (app/error.tsx).
 */
export function tellFailures(): void {
  subscribe("http.server.request.start", (message) => {
    const { request, response } = message as { request: IncomingMessage; response: ServerResponse }; // the shape that Node documents for this channel
    if (isRoute(request)) tellFailure(response);
  });
}

function isRoute({ method, url = "/" }: IncomingMessage): boolean {
  const path = url.split(/[?#]/, 1)[0] ?? "/";
  return routes.some((route) => route.method === method && route.path.test(path));
}

/**
 * Without a word is what has no type of content when its head goes out. That may be before its end is asked for: the server
 * compresses, and writes the head first.
 */
function tellFailure(response: ServerResponse): void {
  const writeHead = response.writeHead.bind(response) as (status: number, ...more: unknown[]) => ServerResponse; // one of its overloads
  const end = response.end.bind(response) as (body?: unknown, ...more: unknown[]) => ServerResponse; // as above
  let code: string | undefined;
  const beginTelling = (status: number) => {
    if (status !== 500 || code !== undefined || response.headersSent || response.hasHeader("Content-Type")) return;
    code = randomUUID();
    response.setHeader("Content-Type", "application/problem+json");
    response.setHeader("Cache-Control", "no-store");
    response.setHeader(failureHeader, code);
    response.removeHeader("Content-Length");
  };
  response.writeHead = ((status: number, ...more: unknown[]) => {
    if (more.length === 0) beginTelling(status);
    return writeHead(status, ...more);
  }) as ServerResponse["writeHead"];
  response.end = ((body?: unknown, ...more: unknown[]) => {
    if (body !== undefined && typeof body !== "function") return end(body, ...more);
    beginTelling(response.statusCode);
    return code === undefined ? end(body, ...more) : end(problemOf(code));
  }) as ServerResponse["end"];
}

function problemOf(code: string): string {
  return JSON.stringify({
    type: "about:blank",
    title: "The answer could not be put together",
    status: 500,
    detail: "The failure is the program's own. Try again; if it fails again, tell whoever hosts the site this code.",
    instance: `urn:uuid:${code}`,
    code: code.slice(0, 8),
  });
}
