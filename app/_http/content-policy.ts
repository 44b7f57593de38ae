import { randomBytes } from "node:crypto";
import { subscribe, unsubscribe } from "node:diagnostics_channel";
import type { IncomingMessage, ServerResponse } from "node:http";

const channel = "http.server.request.start";
const name = "content-security-policy";

/**
 * What a page may load and run: scripts that carry this answer's own nonce and what those load, nothing else, whatever
 * stands in the page; everything from this server. Charts place their marks by style attributes, which hold no selector.
 * A development server also evaluates text and adds style elements.
 */
export function contentPolicy(nonce: string, { development }: { readonly development: boolean }): string {
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${development ? " 'unsafe-eval'" : ""}`,
    `style-src 'self' ${development ? "'unsafe-inline'" : `'nonce-${nonce}'`}`,
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self'${development ? " ws:" : ""}`,
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join("; ");
}

/**
 * From now on every answer has such a policy of its own. The framework takes the nonce for its scripts from the header of
 * the request, whatever came there with it. Set at the server and not in a file of the framework's that runs before each
 * page: that costs a copy of the request, this a few microseconds.
 * @returns what ends it
 */
export function guardContent({ development }: { readonly development: boolean }): () => void {
  const guard = (message: unknown) => {
    const { request, response } = message as { request: IncomingMessage; response: ServerResponse }; // the shape that Node documents for this channel
    const policy = contentPolicy(randomBytes(16).toString("base64"), { development });
    request.headers[name] = policy;
    response.setHeader(name, policy);
  };
  subscribe(channel, guard);
  return () => void unsubscribe(channel, guard);
}

/** The nonce of an answer, for what is written past the framework. */
export function nonceOf(response: ServerResponse): string {
  return /'nonce-([^']+)'/.exec(String(response.getHeader(name)))?.[1] ?? "";
}
