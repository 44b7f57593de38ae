// The same from the sources, while the site is developed: threads do not take over how the process reads TypeScript.
import { register } from "tsx/esm/api";

register();
await import("./judging-thread.ts");
