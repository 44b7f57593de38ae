// Where a load's time goes: processor seconds on both sides of the socket, and with `--profile` the time of each statement.
import { EventEmitter } from "node:events";
import { readdirSync, readFileSync } from "node:fs";
import { Client } from "pg";
import { databaseUrl } from "@/db/connection";
import { say } from "./say";

/** Processor seconds used up to now. */
export interface Processor {
  readonly own: number;
  /** Of the server with all its processes, ended ones too; undefined where it runs elsewhere or the system does not say. */
  readonly server: number | undefined;
}

const ticksASecond = 100;

export async function processorSeconds(): Promise<Processor> {
  const { user, system } = process.cpuUsage();
  return { own: (user + system) / 1e6, server: await serverSeconds() };
}

/** What was used from `before` to now. */
export async function processorSince(before: Processor): Promise<Processor> {
  const now = await processorSeconds();
  const server = before.server === undefined || now.server === undefined ? undefined : now.server - before.server;
  return { own: now.own - before.own, server };
}

export function describeProcessor({ own, server }: Processor): string {
  return `${own.toFixed(1)}; ${server === undefined ? "not known" : `${server.toFixed(1)} s`}`;
}

/** How much of the one the other is, both sides together; a busy machine disturbs it less than it does the clock. */
export function shareOf(one: Processor, other: Processor): string {
  if (one.server === undefined || other.server === undefined) return "not known";
  return ((one.own + one.server) / (other.own + other.server)).toFixed(3);
}

async function serverSeconds(): Promise<number | undefined> {
  const parent = await postmaster();
  return parent === undefined ? undefined : (await settledTicks(parent)) / ticksASecond;
}

/** The process from which all of the server's come; undefined where it runs elsewhere. */
async function postmaster(): Promise<number | undefined> {
  const client = new Client({ connectionString: await databaseUrl() });
  await client.connect();
  try {
    const { rows } = await client.query<{ pid: number }>("select pg_backend_pid() as pid");
    const backend = stat(rows[0]?.pid ?? 0);
    return backend?.name === "postgres" ? backend.parent : undefined; // another machine's number, or another namespace's
  } finally {
    await client.end();
  }
}

/** A process that has just ended is in neither sum until its parent has noticed: the larger of two readings. */
async function settledTicks(parent: number): Promise<number> {
  const first = treeTicks(parent);
  await new Promise((resolve) => setTimeout(resolve, 100));
  return Math.max(first, treeTicks(parent));
}

function treeTicks(parent: number): number {
  const own = stat(parent);
  let ticks = (own?.ticks ?? 0) + (own?.endedTicks ?? 0);
  for (const entry of readdirSync("/proc")) {
    const each = /^\d+$/.test(entry) ? stat(Number(entry)) : undefined;
    if (each?.parent === parent) ticks += each.ticks + each.endedTicks;
  }
  return ticks;
}

interface Stat {
  readonly name: string;
  readonly parent: number;
  readonly ticks: number;
  readonly endedTicks: number;
}

/** The fields of /proc that proc(5) numbers 2, 4 and 14 to 17. */
function stat(pid: number): Stat | undefined {
  try {
    const [, name = "", rest = ""] = readFileSync(`/proc/${pid}/stat`, "utf8").match(/\((.*)\) (.*)/s) ?? [];
    const fields = rest.split(" ").map(Number);
    const at = (number: number) => fields[number - 3] ?? 0;
    return { name, parent: at(4), ticks: at(14) + at(15), endedTicks: at(16) + at(17) };
  } catch {
    return undefined;
  }
}

interface Spent {
  ms: number;
  ticks: number;
  times: number;
}

/**
 * Times every statement that this process sends, by the clock and by what the server's processes used meanwhile, which
 * no busy machine disturbs. Numbers in it are left out, so that like ones come together.
 */
export class StatementTimes {
  readonly #spent = new Map<string, Spent>();
  readonly #query = Client.prototype.query;
  readonly #ticks: () => number;

  private constructor(ticks: () => number) {
    this.#ticks = ticks;
  }

  static async ofServer(): Promise<StatementTimes> {
    const parent = await postmaster();
    return new StatementTimes(parent === undefined ? () => 0 : () => treeTicks(parent));
  }

  begin(): void {
    const query: (...given: unknown[]) => unknown = this.#query;
    const ticks = this.#ticks;
    const add = (text: string, ms: number, used: number) => this.#add(text, ms, used);
    const timed = function (this: Client, ...given: unknown[]): unknown {
      const used = ticks();
      const before = performance.now();
      const answer = query.apply(this, given);
      const done = () => add(textOf(given[0]), performance.now() - before, ticks() - used);
      if (answer instanceof Promise) answer.then(done, () => {});
      else if (answer instanceof EventEmitter) answer.once("close", done);
      return answer;
    };
    Object.assign(Client.prototype, { query: timed });
  }

  /** Says what took longest, and forgets it. */
  end(most = 45): void {
    Object.assign(Client.prototype, { query: this.#query });
    const dearest = [...this.#spent].toSorted(([, a], [, b]) => b.ticks - a.ticks || b.ms - a.ms).slice(0, most);
    for (const [text, { ms, ticks, times }] of dearest)
      say(
        `    ${text.slice(0, 150)}`,
        `${ms.toFixed(0)} ms, processor ${(1000 / ticksASecond) * ticks} ms, ${times} x`,
      );
    this.#spent.clear();
  }

  #add(text: string, ms: number, ticks: number): void {
    const like = text.replaceAll(/\d+/g, "N").replaceAll(/\s+/g, " ");
    const spent = this.#spent.get(like) ?? { ms: 0, ticks: 0, times: 0 };
    this.#spent.set(like, { ms: spent.ms + ms, ticks: spent.ticks + ticks, times: spent.times + 1 });
  }
}

function textOf(query: unknown): string {
  if (typeof query === "string") return query;
  return typeof query === "object" && query !== null && "text" in query ? String(query.text) : "copy";
}
