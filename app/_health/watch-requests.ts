import { subscribe } from "node:diagnostics_channel";
import type { IncomingMessage, ServerResponse } from "node:http";
import { monitorEventLoopDelay, performance } from "node:perf_hooks";
import { failureHeader } from "@/app/_http/tell-failures";
import { beginRequest } from "@/db/actor";
import { FourSignals } from "./four-signals";
import { logLine } from "./log-line";
import { placeOfRequest } from "./place-of-request";

interface Exchange {
  readonly request: IncomingMessage;
  readonly response: ServerResponse;
}

/** Signals of this process; every copy of this module that a bundle carries reads the same ones. */
interface Watched {
  readonly signals: FourSignals;
  readonly delay: ReturnType<typeof monitorEventLoopDelay>;
}

const key = Symbol.for("ohmsworth.signals");
const store = globalThis as { [key: symbol]: Watched | undefined }; // symbols of our own on the global object have no type there

/** Which answers are a line in the log. */
export type Logged = "requests" | "failures" | "off";

/** From now on every request to this process is counted and timed, and each, or each that failed, is one line of JSON in the log. */
export function watchRequests(logged: Logged): void {
  if (store[key] !== undefined) return;
  const delay = monitorEventLoopDelay({ resolution: 20 });
  delay.enable();
  const signals = new FourSignals();
  store[key] = { signals, delay };
  const started = new WeakMap<IncomingMessage, number>();
  subscribe("http.server.request.start", (message) => {
    const { request } = message as Exchange; // the shape that Node documents for this channel
    started.set(request, performance.now());
    noteOrigin(request);
    beginRequest();
  });
  subscribe("http.server.response.finish", (message) => {
    const { request, response } = message as Exchange; // as above
    const start = started.get(request);
    if (start === undefined) return;
    const at = performance.now();
    const answered = { at, ms: at - start, status: response.statusCode };
    if (answered.status < 500 && request.url === "/readyz") return; // every page that is open asks, and would drown the rest
    signals.note(answered);
    const failure = response.getHeader(failureHeader);
    if (logged === "off" || (logged === "failures" && answered.status < 500 && failure === undefined)) return;
    logAnswer(request, answered, failure);
  });
}

/**
 * Which address was asked for and from where, as headers that pages can read. What a request brings under these names is
 * thrown away. Where a trusted proxy stands in front, the last address is the one that it wrote; see ./trust-proxy.
 */
function noteOrigin(request: IncomingMessage): void {
  const forwarded = String(request.headers["x-forwarded-for"] ?? "");
  request.headers["ohmsworth-address"] = request.url ?? "/";
  request.headers["ohmsworth-peer"] =
    forwarded.split(",").at(-1)?.trim() || (request.socket.remoteAddress ?? "unknown");
}

/** What was counted so far; undefined in a process that serves no pages. */
export function watched(): Watched | undefined {
  return store[key];
}

/**
 * The kind of page and no name, number or word that was asked for: a log is read by more people than the page is. Parts
 * of pages that never change are not told unless they failed.
 */
function logAnswer(
  request: IncomingMessage,
  { ms, status }: { readonly ms: number; readonly status: number },
  failure: unknown,
): void {
  const url = request.url ?? "/";
  if (status < 500 && url.startsWith("/_next/")) return;
  logLine({
    level: status >= 500 ? "error" : "info",
    what: "answer",
    method: request.method,
    place: placeOfRequest(url),
    status,
    ms: Math.round(ms),
    ...(typeof failure === "string" ? { failure: failure.slice(0, 8) } : {}),
  });
}
