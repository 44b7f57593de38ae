import process from "node:process";
import { fileURLToPath } from "node:url";

/** Everything below works from the project's own folder, wherever the command was given. */
export function enterProjectFolder() {
  process.chdir(fileURLToPath(new URL("../../..", import.meta.url)));
}
