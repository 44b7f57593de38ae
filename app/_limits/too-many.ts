import { randomUUID } from "node:crypto";
import type { IncomingMessage, ServerResponse } from "node:http";
import { nonceOf } from "@/app/_http/content-policy";
import { failureHeader } from "@/app/_http/tell-failures";

const retrySeconds = 5;
const title = "Too much at once";
const detail =
  "More was asked for at once than one person or program is given, so that everybody else's pages stay quick. What was asked for first is being put together still; nothing was changed.";

/** Answers 429: a page in words for a person, application/problem+json for a program, both with a code that is in the log. */
export function answerTooMany(request: IncomingMessage, response: ServerResponse): void {
  const code = randomUUID();
  response.statusCode = 429;
  response.setHeader("Retry-After", String(retrySeconds));
  response.setHeader("Cache-Control", "no-store");
  response.setHeader(failureHeader, code);
  const isPerson = request.headers.accept?.includes("text/html") === true;
  response.setHeader("Content-Type", isPerson ? "text/html; charset=utf-8" : "application/problem+json");
  response.end(isPerson ? pageOf(request.url ?? "/", code, nonceOf(response)) : problemOf(code));
}

function problemOf(code: string): string {
  const instance = `urn:uuid:${code}`;
  return JSON.stringify({ type: "about:blank", title, status: 429, detail, instance, code: code.slice(0, 8) });
}

/** The server's own, since making one of the site's pages is what there is too much of. */
function pageOf(url: string, code: string, nonce: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<style nonce="${nonce}">
:root { color-scheme: light dark; background: light-dark(#f4f1ea, #121a1b); color: light-dark(#1e2a2b, #ece7dc); font: 1rem/1.5 system-ui, sans-serif; }
main { max-width: 60ch; margin: 10vh auto 0; padding: 0 1.25rem; }
a { color: light-dark(#0e5a5e, #7fd3d3); }
</style>
<title>${title} · Ohmsworth</title>
</head>
<body>
<main>
<h1>${title}</h1>
<p>${detail}</p>
<p>Wait ${retrySeconds} seconds, then <a href="${inAttribute(url)}">ask again</a>, or go to <a href="/today">Today</a>.</p>
<p>Code <code>${code.slice(0, 8)}</code></p>
</main>
</body>
</html>
`;
}

function inAttribute(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll('"', "&quot;").replaceAll("<", "&lt;");
}
