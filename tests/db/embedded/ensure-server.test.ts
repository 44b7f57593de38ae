import { spawn } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { Client } from "pg";
import { afterAll, afterEach, beforeAll, expect, onTestFinished, test } from "vitest";
import { ensureEmbeddedServer } from "@/db/embedded/ensure-server";
import { clusterFolder } from "@/db/embedded/make-cluster";
import { isServerOf, readPostmaster } from "@/db/embedded/postmaster";
import { answerOf, asker, copiedFolders, ended, newDataFolder, query, removeDataFolder, serverPid } from "./servers";

const ready = copiedFolders();
let folder = "";
beforeAll(ready.make);
afterAll(ready.remove);
afterEach(() => removeDataFolder(folder));

test("a first start makes a server that only this login can reach and that writes before it answers", async () => {
  folder = newDataFolder("with a space, a comma and 'quotes'");
  const server = await ensureEmbeddedServer(folder);
  expect(server.started).toBe(true);
  const shown = async (name: string) => (await query(server.url, `show ${name}`))[0]?.[name];
  expect(await shown("fsync")).toBe("on");
  expect(await shown("synchronous_commit")).toBe("on");
  expect(await shown("full_page_writes")).toBe("on");
  expect(await shown("listen_addresses")).toBe("");
  expect(await shown("server_encoding")).toBe("UTF8");
  expect(await query(server.url, "select current_database() as name")).toEqual([{ name: "ohmsworth" }]);
  expect(statSync(join(folder, "password")).mode & 0o077).toBe(0);
  await expect(query(server.url.replace(/:[0-9a-f]{48}@/, ":guess@"), "select 1")).rejects.toThrow("password");
  const pid = serverPid(folder);
  await server.stop();
  expect(isServerOf(clusterFolder(folder), pid)).toBe(false);
  expect(readdirSync(folder).sort()).toEqual(["password", "pg", "server.log", "socket"]);
  expect(readdirSync(join(folder, "socket"))).toEqual([]);
});

test("a path too long for a socket is served from a private folder elsewhere, which goes when the server stops", async () => {
  folder = ready.copy(join("n".repeat(60), "ö".repeat(40)));
  const server = await ensureEmbeddedServer(folder);
  expect(await query(server.url, "select 1 as one")).toEqual([{ one: 1 }]);
  const outside = readFileSync(join(folder, "socket-folder"), "utf8");
  expect(statSync(outside).mode & 0o077).toBe(0);
  await server.stop();
  expect(existsSync(outside)).toBe(false);
});

test("four processes that start at once on an empty folder share one server", async () => {
  folder = newDataFolder();
  const answers = await Promise.all(Array.from({ length: 4 }, () => answerOf(asker(folder))));
  expect(answers.filter(({ started }) => started)).toHaveLength(1);
  const starts = await Promise.all(
    answers.map(({ url }) => query(url, "select pg_postmaster_start_time()::text as at")),
  );
  expect(new Set(starts.map(([row]) => row?.at)).size).toBe(1);
});

test("a second process attaches, and does not stop what it did not start", async () => {
  folder = ready.copy();
  const server = await ensureEmbeddedServer(folder);
  const second = asker(folder, "stop");
  expect(await answerOf(second)).toEqual({ url: server.url, started: false });
  await ended(second);
  expect(await query(server.url, "select 1 as one")).toEqual([{ one: 1 }]);
});

test("a server in use is left running, and the last to leave stops it", async () => {
  folder = ready.copy();
  const first = await ensureEmbeddedServer(folder);
  const second = await ensureEmbeddedServer(folder);
  const user = new Client({ connectionString: second.url });
  await user.connect();
  const pid = serverPid(folder);
  await first.stop();
  expect(isServerOf(clusterFolder(folder), pid)).toBe(true);
  await user.end();
  await second.stop();
  expect(isServerOf(clusterFolder(folder), pid)).toBe(false);
});

test("a program killed in the middle of a statement does not keep the server running", async () => {
  folder = ready.copy();
  const server = await ensureEmbeddedServer(folder);
  const sleeper = new Client({ connectionString: server.url });
  sleeper.on("error", () => {});
  await sleeper.connect();
  sleeper.query("select pg_sleep(600)").catch(() => {});
  await pause(300);
  const pid = serverPid(folder);
  // Its socket is cut without a word, as it is when a program is killed.
  sleeper.connection.stream.destroy();
  await server.stop();
  expect(isServerOf(clusterFolder(folder), pid)).toBe(false);
});

test("initdb cut off half-way leaves nothing that is taken for a database", async () => {
  folder = newDataFolder();
  const first = asker(folder);
  await until(() => existsSync(folder) && readdirSync(folder).some((name) => unfinished(folder, name)));
  first.kill("SIGKILL");
  await ended(first);
  expect(existsSync(clusterFolder(folder))).toBe(false);
  const server = await ensureEmbeddedServer(folder);
  expect(await query(server.url, "select 1 as one")).toEqual([{ one: 1 }]);
  expect(readdirSync(folder).filter((name) => name.startsWith("pg."))).toEqual([]);
});

test("a server whose starter was killed is found again, not started twice, and stopped by the one that found it", async () => {
  folder = ready.copy();
  const starter = asker(folder, "stay");
  const { url } = await answerOf(starter);
  const pid = serverPid(folder);
  starter.kill("SIGKILL");
  await ended(starter);
  const server = await ensureEmbeddedServer(folder);
  expect(server).toMatchObject({ url, started: false });
  expect(serverPid(folder)).toBe(pid);
  await server.stop();
  expect(isServerOf(clusterFolder(folder), pid)).toBe(false);
});

test("a server that was killed outright starts again with every committed row", async () => {
  folder = ready.copy();
  const { url } = await answerOf(asker(folder));
  await query(url, "create table kept (n int)");
  await query(url, "insert into kept select generate_series(1, 1000)");
  process.kill(serverPid(folder), "SIGKILL");
  const server = await ensureEmbeddedServer(folder);
  expect(server.started).toBe(true);
  expect(await query(server.url, "select count(*)::int as n from kept")).toEqual([{ n: 1000 }]);
});

test("a number in the server's lock files that now belongs to another program does not stop a start", async () => {
  folder = ready.copy();
  const first = await ensureEmbeddedServer(folder);
  const pidFile = join(clusterFolder(folder), "postmaster.pid");
  const left = readFileSync(pidFile, "utf8");
  const socketLock = readFileSync(join(folder, "socket", ".s.PGSQL.5432.lock"), "utf8");
  await first.stop();
  const stranger = spawn("sleep", ["60"]);
  onTestFinished(() => void stranger.kill());
  const renumbered = (text: string) => text.replace(/^\d+/, String(stranger.pid));
  writeFileSync(pidFile, renumbered(left));
  writeFileSync(join(folder, "socket", ".s.PGSQL.5432.lock"), renumbered(socketLock));
  expect(readPostmaster(clusterFolder(folder)).kind).toBe("stale");
  expect((await ensureEmbeddedServer(folder)).started).toBe(true);
  expect(stranger.exitCode).toBeNull();
});

test("a lock whose holder is dead does not stop a start", async () => {
  folder = ready.copy();
  const holder = spawn("true");
  await ended(holder);
  writeFileSync(join(folder, "start.lock"), String(holder.pid));
  expect((await ensureEmbeddedServer(folder)).started).toBe(true);
  expect(existsSync(join(folder, "start.lock"))).toBe(false);
});

test("a database of another major version is refused with both numbers and left as it is", async () => {
  folder = newDataFolder();
  mkdirSync(clusterFolder(folder), { recursive: true });
  writeFileSync(join(clusterFolder(folder), "PG_VERSION"), "12\n");
  await expect(ensureEmbeddedServer(folder)).rejects.toThrow(/written by PostgreSQL 12, .* brings PostgreSQL 18/);
  expect(readdirSync(clusterFolder(folder))).toEqual(["PG_VERSION"]);
});

/** True when the cluster being made has some files and not all. */
function unfinished(dataFolder: string, name: string): boolean {
  return name.startsWith("pg.new.") && existsSync(join(dataFolder, name, "PG_VERSION"));
}

async function until(true_: () => boolean): Promise<void> {
  while (!true_()) await pause(5);
}
