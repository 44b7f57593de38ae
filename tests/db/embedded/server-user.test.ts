import { spawnSync } from "node:child_process";
import { chownSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { clusterFolder } from "@/db/embedded/make-cluster";
import { findServerUser } from "@/db/embedded/server-user";
import { answerOf, asker, ended, newDataFolder, query, removeDataFolder, serverPid } from "./servers";

const root = process.getuid?.() === 0;
const nobody = 65534;
const asNobody = ["setpriv", `--reuid=${nobody}`, `--regid=${nobody}`, "--clear-groups"];
/** An ordinary user must be able to read the project for this; it cannot where the project lies under /root. */
const nobodyCanRead =
  root && spawnSync("setpriv", [...asNobody.slice(1), "test", "-r", import.meta.filename]).status === 0;
const postgresAccount = root && /^postgres:/m.test(readFileSync("/etc/passwd", "utf8"));

let folder = "";
afterEach(() => (folder === "" ? undefined : removeDataFolder(folder)));

test.skipIf(root)("an ordinary user runs the server as itself", () => {
  expect(findServerUser([])).toEqual({ kind: "self" });
});

// Skipped unless root may become another user here.
test.skipIf(!nobodyCanRead)("a process of an ordinary user makes, uses and stops a server of its own", async () => {
  folder = newDataFolder();
  chownSync(dirname(folder), nobody, nobody);
  const first = asker(folder, "leave", asNobody);
  const { url, started } = await answerOf(first);
  expect(started).toBe(true);
  expect(await query(url, "select 1 as one")).toEqual([{ one: 1 }]);
  expect(statSync(clusterFolder(folder)).uid).toBe(nobody);
  expect(statSync(`/proc/${serverPid(folder)}`).uid).toBe(nobody);
  await ended(first);
  const second = asker(folder, "stop", asNobody);
  expect(await answerOf(second)).toEqual({ url, started: false });
  await ended(second);
  expect(() => serverPid(folder)).toThrow("ENOENT");
});

// Skipped where there is no such account to fall back to.
test.skipIf(!postgresAccount)(
  "root without user namespaces takes the postgres account if it can pass, and else says what to do",
  () => {
    expect(findServerUser(["/"], "no-such-unshare")).toMatchObject({ kind: "account" });
    const shut = join(newDataFolder(), "missing");
    folder = dirname(shut);
    expect(() => findServerUser([shut], "no-such-unshare")).toThrow(/as an ordinary user, or set DATABASE_URL/);
  },
);
