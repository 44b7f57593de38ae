// Where a thread begins that judges a share of the units. Threads do not take over how the process reads TypeScript.
import { register } from "tsx/esm/api";

register();
const { judgeOnThread } = await import("./judge-on-thread.ts");
await judgeOnThread();
