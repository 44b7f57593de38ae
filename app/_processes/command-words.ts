import { existsSync } from "node:fs";
import { join } from "node:path";

/**
 * What Node is given to run a command in a process of its own: the file that was bundled with the site, or else, while the
 * site is developed, the source.
 */
export function commandWords(name: string): readonly string[] {
  const bundled = join(".next", "commands", `${name}.mjs`);
  if (process.env.NODE_ENV === "production" && existsSync(/* turbopackIgnore: true */ bundled)) return [bundled];
  return ["--import", "tsx", join("app", "commands", `${name}.ts`)];
}
