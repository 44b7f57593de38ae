import { existsSync, readFileSync } from "node:fs";
import process from "node:process";
import { runNode, runStep } from "./run-step.mjs";
import { say } from "./say.mjs";

/** Installs when node_modules is missing, was cut off half-way, or does not hold what package-lock.json asks for. */
export async function installIfMissing(signal) {
  if (isInstalled()) return;
  say("installing what is missing (npm ci) …");
  const words = ["ci", "--include=dev", "--no-audit", "--no-fund"];
  const npm = process.env.npm_execpath; // the npm that started us, if one did
  if (npm?.endsWith(".js")) await runNode("npm ci", [npm, ...words], { signal });
  else await runStep("npm ci", process.platform === "win32" ? "npm.cmd" : "npm", words, { signal });
}

/** npm writes its own list of what it installed as the last thing it does; it need only be compared with the wanted one. */
function isInstalled() {
  const list = "node_modules/.package-lock.json";
  if (!existsSync(list)) return false;
  const wanted = packagesOf("package-lock.json");
  const found = packagesOf(list);
  return Object.entries(wanted).every(([path, { version, optional, peer, link }]) => {
    if (path === "" || link) return true;
    if (found[path] === undefined) return optional === true || peer === true; // for another machine, or not wanted
    return found[path].version === version;
  });
}

function packagesOf(file) {
  try {
    return JSON.parse(readFileSync(file, "utf8")).packages ?? {};
  } catch {
    return {};
  }
}
