// What a thread runs that judges a share of the units; bundled with the site as its commands are.
import { judgeOnThread } from "./judge-on-thread";

await judgeOnThread();
