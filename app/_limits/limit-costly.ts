// Who asks for much waits behind themselves. The limit stands at the server, before pages and handlers: a page cannot answer
// 429, and what is turned away here has cost nothing.
import { subscribe, unsubscribe } from "node:diagnostics_channel";
import type { IncomingMessage, Server, ServerResponse } from "node:http";
import { setTimeout as pause } from "node:timers/promises";
import { type Costly, costlyKind } from "./costly-addresses";
import { answerTooMany } from "./too-many";
import { type TurnRules, Turns } from "./turns";
import { whoAsks } from "./who-asks";

const channel = "http.server.request.start";

type Handler = (request: IncomingMessage, response: ServerResponse) => unknown;

interface Rules extends TurnRules {
  /** Whoever goes away leaves work behind that nobody can call back: their turn lasts so long at least, and so long at most. */
  readonly leftBehindMs: { readonly least: number; readonly most: number };
}

/** Our own choice: one view, and one archive, at a time, with room for whoever opens several tabs; see DEVELOPERS.md. */
const usual: Rules = { atOnce: 1, waiting: 8, patienceMs: 10_000, leftBehindMs: { least: 2000, most: 60_000 } };

/**
 * From now on one person has so many costly answers put together at once, so many more wait, and the rest are answered 429.
 * @returns what ends it, for servers that have not been asked anything yet
 */
export function limitCostly(rules: Rules = usual): () => void {
  const lines = { view: new Turns(rules), long: new Turns(rules) };
  const limited = new WeakSet<Server>();
  const seen = (message: unknown) => {
    const { server } = message as { readonly server: Server }; // the shape that Node documents for this channel
    if (limited.has(server)) return;
    limited.add(server);
    standBefore(server, lines, rules);
  };
  subscribe(channel, seen);
  return () => void unsubscribe(channel, seen);
}

/** The server's own handlers are called by ours from its first request on; the channel speaks before they are. */
function standBefore(server: Server, lines: Readonly<Record<Costly, Turns>>, rules: Rules): void {
  const handlers = server.listeners("request") as Handler[]; // listeners of this event have this form
  const handle = async (request: IncomingMessage, response: ServerResponse) => {
    await Promise.all(handlers.map((handler) => handler.call(server, request, response)));
  };
  server.removeAllListeners("request");
  server.on("request", (request: IncomingMessage, response: ServerResponse) => {
    const kind = costlyKind(request);
    return kind === undefined
      ? handle(request, response)
      : serveInTurn({ turns: lines[kind], rules, handle }, request, response);
  });
}

interface Serving {
  readonly turns: Turns;
  readonly rules: Rules;
  readonly handle: (request: IncomingMessage, response: ServerResponse) => Promise<void>;
}

async function serveInTurn(
  { turns, rules, handle }: Serving,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const turn = turns.ask(whoAsks(request));
  const closed = new Promise<void>((resolve) => response.once("close", resolve));
  let begun = false;
  closed.then(() => begun || turn.end());
  if (!(await turn.granted)) {
    if (!response.destroyed) answerTooMany(request, response);
    return;
  }
  begun = true;
  try {
    const handled = handle(request, response);
    await Promise.race([closed, handled.then(() => closed)]);
    if (response.writableFinished) return;
    await Promise.race([
      Promise.allSettled([handled, pause(rules.leftBehindMs.least)]),
      pause(rules.leftBehindMs.most),
    ]);
  } finally {
    turn.end();
  }
}
