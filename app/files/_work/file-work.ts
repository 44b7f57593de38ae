import { type ChildProcess, spawn } from "node:child_process";
import { commandWords } from "@/app/_processes/command-words";
import { currentActor } from "@/db/actor";
import { type BeginMessage, type FileTask, isProgressMessage, type WorkProgress } from "./work-state";

/** How a working process ended. What it found out stands in the draft; only `done` left anything there. */
export type WorkEnd = "done" | "stopped" | "out of memory" | "out of time" | "failed";

interface Work {
  readonly task: FileTask;
  /** Who asked for it. */
  readonly by: string;
  progress: WorkProgress;
  child: ChildProcess | undefined;
  ending: "stopped" | "out of time" | undefined;
}

const starting: WorkProgress = { words: "Starting", done: 0, total: undefined };

/** Two processors are common, and the site itself needs some of them. */
const mostAtOnce = 2;
const memoryMegabytes = 448;
const longestMinutes = 120;
/** Time to end in order before it is ended by force. */
const graceMs = 5_000;

interface Works {
  readonly all: Map<string, Work>;
  /** Processes that run, or are about to. */
  busy: number;
  readonly waiting: (() => void)[];
}

/** On the global object, because the bundles of pages and of route handlers each carry a copy of this module. */
const key = Symbol.for("ohmsworth.work-on-files");
const holder = globalThis as { [key: symbol]: Works | undefined }; // symbols of our own have no type there
holder[key] ??= { all: new Map(), busy: 0, waiting: [] };
const works = holder[key];

/**
 * Works on a draft in a process of its own, one task at a time for each draft. `onEnd` is called once, unless the
 * site itself ends first: then the process ends with it.
 * @returns false where something is being done with that draft already
 */
export function startWork(draftId: string, task: FileTask, onEnd: (end: WorkEnd) => Promise<void>): boolean {
  if (works.all.has(draftId)) return false;
  const work: Work = {
    task,
    by: currentActor(),
    progress: starting,
    child: undefined,
    ending: undefined,
  };
  works.all.set(draftId, work);
  void run(draftId, work)
    .then(onEnd)
    .catch((error: unknown) => console.error(error))
    .finally(() => works.all.delete(draftId));
  return true;
}

/** What is being done with the draft; undefined where nothing is. */
export function workOn(draftId: string): { readonly task: FileTask; readonly progress: WorkProgress } | undefined {
  return works.all.get(draftId);
}

/** Ends the work in hand. Nothing of a load that is stopped stays. */
export function stopWork(draftId: string): void {
  const work = works.all.get(draftId);
  if (work !== undefined) end(work, "stopped");
}

async function run(draftId: string, work: Work): Promise<WorkEnd> {
  await turn(work);
  try {
    if (work.ending !== undefined) return work.ending;
    return await inProcess(draftId, work);
  } finally {
    const next = works.waiting.shift();
    if (next === undefined) works.busy--;
    else next(); // takes this one's place
  }
}

/** Comes back when fewer than `mostAtOnce` others are working. */
async function turn(work: Work): Promise<void> {
  if (works.busy < mostAtOnce) {
    works.busy++;
    return;
  }
  work.progress = { words: "Waiting for another file", done: 0, total: undefined };
  await new Promise<void>((resolve) => works.waiting.push(resolve));
}

function inProcess(draftId: string, work: Work): Promise<WorkEnd> {
  const child = spawn(
    process.execPath,
    [`--max-old-space-size=${memoryMegabytes}`, ...commandWords("work-on-file"), draftId, work.task],
    { stdio: ["ignore", "inherit", "inherit", "ipc"], env: { ...process.env, NODE_OPTIONS: "" } },
  );
  work.child = child;
  work.progress = starting;
  child.send({ by: work.by } satisfies BeginMessage, () => {}); // not in its environment, where others could read names; one that ends at once says so below
  child.on("message", (message) => {
    if (isProgressMessage(message)) work.progress = message.progress;
  });
  const late = setTimeout(() => end(work, "out of time"), longestMinutes * 60_000);
  return new Promise<WorkEnd>((resolve) => {
    child.once("error", () => resolve("failed")); // it could not be started
    child.once("exit", (code, signal) =>
      resolve(work.ending !== undefined && code !== 0 ? work.ending : endOf(code, signal)),
    );
  }).finally(() => clearTimeout(late));
}

function endOf(code: number | null, signal: NodeJS.Signals | null): WorkEnd {
  if (code === 0) return "done";
  // V8 ends the process by SIGABRT when the heap is full; a shell in between turns that into 134.
  return signal === "SIGABRT" || code === 134 ? "out of memory" : "failed";
}

function end(work: Work, how: "stopped" | "out of time"): void {
  work.ending ??= how;
  const { child } = work;
  if (child === undefined) return;
  child.kill("SIGTERM");
  setTimeout(() => child.kill("SIGKILL"), graceMs).unref();
}
