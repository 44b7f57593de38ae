/** What is done with a file away from the web server, so that a large file stalls nobody else. */
export const fileTasks = ["look", "check", "add"] as const;
export type FileTask = (typeof fileTasks)[number];

/** How far the work has come. */
export interface WorkProgress {
  /** What is being done: "Reading rows". */
  readonly words: string;
  readonly done: number;
  /** Undefined where it cannot be known yet. */
  readonly total: number | undefined;
}

/** Sent by the working process while it works. What came of it stands in the draft. */
export interface ProgressMessage {
  readonly progress: WorkProgress;
}

export function isProgressMessage(message: unknown): message is ProgressMessage {
  return typeof message === "object" && message !== null && "progress" in message;
}

/** Sent to the working process as it starts: in whose name it works, empty where nobody is signed in. */
export interface BeginMessage {
  readonly by: string;
}

export function isBeginMessage(message: unknown): message is BeginMessage {
  return typeof message === "object" && message !== null && "by" in message && typeof message.by === "string";
}
