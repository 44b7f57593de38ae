// Works on a file that was sent to the site, in a process of its own: the site starts it, and it ends with the site.
import { constants, setPriority } from "node:os";
import { asActor } from "@/db/actor";
import { closeDatabase } from "@/db/close-database";
import { doTask } from "../files/_work/do-task";
import { type FileTask, fileTasks, isBeginMessage, type ProgressMessage } from "../files/_work/work-state";

const pauseBetweenMessagesMs = 150;
/** Time to end in order where nobody is left to end this process by force. */
const graceMs = 5_000;
let lastMessageAt = 0;

function tell(message: ProgressMessage): void {
  const now = performance.now();
  if (now - lastMessageAt < pauseBetweenMessagesMs || process.send === undefined) return;
  lastMessageAt = now;
  process.send(message);
}

function taskNamed(word: string | undefined): FileTask {
  const task = fileTasks.find((each) => each === word);
  if (task === undefined) throw new RangeError(`task: one of ${fileTasks.join(", ")}, not ${word}.`);
  return task;
}

/** In whose name the changes of this process are logged; nobody's where it was not started by the site. */
function whoAsked(): Promise<string> {
  if (process.send === undefined) return Promise.resolve("");
  return new Promise((resolve) =>
    process.once("message", (message) => resolve(isBeginMessage(message) ? message.by : "")),
  );
}

setPriority(constants.priority.PRIORITY_BELOW_NORMAL); // whoever looks at pages meanwhile comes first
const [draftId = "", task] = process.argv.slice(2);
const stop = new AbortController();
process.on("SIGTERM", () => stop.abort());
process.on("disconnect", () => {
  stop.abort(); // the site has ended
  setTimeout(() => process.exit(1), graceMs).unref();
});

whoAsked()
  .then((by) =>
    asActor(by, () =>
      doTask(draftId, taskNamed(task), { onProgress: (progress) => tell({ progress }), signal: stop.signal }),
    ),
  )
  .catch((error: unknown) => {
    if (!stop.signal.aborted) console.error(error);
    return false;
  })
  .then(async (done) => {
    await closeDatabase();
    process.exit(done ? 0 : 1);
  });
