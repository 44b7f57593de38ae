// A load in a process of its own, watched from outside: how far it is can be read off the server, so that the process
// can be ended by force wherever one wants, without its knowing.
import { spawn } from "node:child_process";
import { setTimeout as pause } from "node:timers/promises";
import { Client } from "pg";

export const phases = ["parse", "stage", "merge", "commit"] as const;
export type Phase = (typeof phases)[number];

/** When each phase was first seen, and when the process had ended, in ms from its start. */
export interface Course {
  readonly began: Readonly<Partial<Record<Phase, number>>>;
  readonly ended: number;
  /** How far it was when it ended. */
  readonly last: Phase;
  readonly killed: boolean;
  readonly said: string;
}

/** Kill so many ms after the phase was first seen. */
export interface Kill {
  readonly phase: Phase;
  readonly after: number;
}

export class LoadWatcher {
  readonly #server: Client;

  constructor(url: string) {
    this.#server = new Client({ connectionString: url, application_name: "watcher" });
  }

  async open(): Promise<void> {
    await this.#server.connect();
  }

  async close(): Promise<void> {
    await this.#server.end();
  }

  /** Runs `node words…` until it ends or is killed, and waits until the server has let go of all it did. */
  async run(words: readonly string[], kill?: Kill): Promise<Course> {
    const loadsBefore = await this.#loads();
    const child = spawn(process.execPath, words, { stdio: ["ignore", "pipe", "pipe"] });
    const start = performance.now();
    const began: Partial<Record<Phase, number>> = { parse: 0 };
    let said = "";
    for (const stream of [child.stdout, child.stderr])
      stream.on("data", (text) => {
        said += text;
      });
    let ended = false;
    const end = new Promise<void>((resolve) =>
      child.on("close", () => {
        ended = true;
        resolve();
      }),
    );
    let killed = false;
    while (!ended && !killed) {
      const phase = await this.#phase(loadsBefore);
      const now = performance.now() - start;
      for (const reached of phases.slice(0, phases.indexOf(phase) + 1)) began[reached] ??= now;
      const since = kill === undefined ? undefined : began[kill.phase];
      if (kill !== undefined && since !== undefined && now - since >= kill.after) killed = child.kill("SIGKILL");
      else await pause(2);
    }
    await end;
    await this.#released();
    const last = phases.findLast((phase) => began[phase] !== undefined) ?? "parse";
    return { began, ended: performance.now() - start, last, killed, said };
  }

  async #loads(): Promise<number> {
    const { rows } = await this.#server.query<{ loads: number }>("select count(*)::integer as loads from batches");
    return rows[0]?.loads ?? 0;
  }

  /** What is in the batches is committed: nobody else sees it before. */
  async #phase(loadsBefore: number): Promise<Phase> {
    const { rows } = await this.#server.query<{ loads: number; stages: boolean; merges: boolean }>(
      `select (select count(*)::integer from batches) as loads, coalesce(bool_or(query ~* '^copy "?staging_'), false) as stages,
         coalesce(bool_or(query ~* 'pg_advisory_xact_lock|staging_' and query !~* '^copy|^create|^drop'), false) as merges
       from pg_stat_activity where datname = current_database() and application_name = 'ohmsworth write' and xact_start is not null`,
    );
    const [seen] = rows;
    if ((seen?.loads ?? 0) > loadsBefore) return "commit";
    return seen?.merges === true ? "merge" : seen?.stages === true ? "stage" : "parse";
  }

  /** A server process works on what it was sent until it notices that nobody listens any more. */
  async #released(): Promise<void> {
    for (;;) {
      const { rows } = await this.#server.query(
        `select from pg_stat_activity where datname = current_database() and application_name like 'ohmsworth %'
           and (xact_start is not null or (application_name = 'ohmsworth staging' and backend_start > now() - interval '10 minutes'))`,
      );
      if (rows.length === 0) return;
      await pause(10);
    }
  }
}
