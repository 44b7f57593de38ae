import { subscribe } from "node:diagnostics_channel";
import type { IncomingMessage } from "node:http";

/** What a proxy says of the request that it passes on. */
const said = ["forwarded", "x-forwarded-for", "x-forwarded-host", "x-forwarded-port", "x-forwarded-proto", "x-real-ip"];

/**
 * Unless a proxy is trusted, takes off what a request says of its own origin, before anything reads it: without a proxy
 * that sets these headers itself, anybody can write them.
 */
export function distrustForwarding(): void {
  subscribe("http.server.request.start", (message) => {
    dropForwarding((message as { readonly request: IncomingMessage }).request); // the shape that Node documents for this channel
  });
}

export function dropForwarding(request: Pick<IncomingMessage, "headers">): void {
  for (const name of said) delete request.headers[name];
}
