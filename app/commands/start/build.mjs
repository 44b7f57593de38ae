import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { bundleCommands } from "./bundle-commands.mjs";
import { runNode } from "./run-step.mjs";
import { Refusal, say } from "./say.mjs";
import { othersServing } from "./serving.mjs";

const next = "node_modules/next/dist/bin/next";
const stamp = ".next/sources-sha256";
const roots = ["app", "lib", "db", "synthetic-data", "public", "next.config.ts", "tsconfig.json", "package-lock.json"];

/** Builds the site unless the last complete build was made from these very sources. */
export async function buildIfChanged(signal) {
  const sources = hashOfSources();
  if (existsSync(".next/BUILD_ID") && existsSync(stamp) && readFileSync(stamp, "utf8") === sources) return;
  const [other] = othersServing();
  if (other !== undefined) {
    throw new Refusal(
      `The sources have changed, and process ${other} is serving the build before from this folder. Stop it first (Ctrl-C in its window, or "kill ${other}").`,
    );
  }
  say("building the site; this takes about half a minute …");
  await runNode("The build", [next, "build"], { signal });
  await bundleCommands(commands(), ".next/commands");
  writeFileSync(stamp, sources);
}

/** All of them: the site starts some, and those of the invented company fill a database in less time. */
function commands() {
  const own = readdirSync("app/commands").filter((name) => name.endsWith(".ts") && name !== "run-command.ts");
  const others = ["synthetic-data/write-files.ts", "db/writes/money/judging-thread.ts"];
  return [...own.map((name) => join("app/commands", name)), ...others];
}

function hashOfSources() {
  const hash = createHash("sha256").update(process.versions.node);
  for (const file of roots.flatMap(filesUnder)) hash.update(`\0${file}\0`).update(readFileSync(file));
  return hash.digest("hex");
}

function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}
