import { closeReader } from "./client";
import { leaveServer } from "./connection";
import { closeWriter } from "./in-transaction";

/** The last thing a command does: closes this process's connections, then leaves the embedded server if that is in use. */
export async function closeDatabase(): Promise<void> {
  await Promise.all([closeReader(), closeWriter()]);
  await leaveServer();
}
