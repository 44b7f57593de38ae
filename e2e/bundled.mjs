import { basename } from "node:path";

/** What Node is given, in the project's folder, to run this program as it was bundled with the site. */
export const bundled = (program) => [`.next/commands/${basename(program, ".ts")}.mjs`];
