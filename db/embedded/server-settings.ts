import { statfsSync } from "node:fs";
import { totalmem } from "node:os";

const mebibyte = 1024 ** 2;

/**
 * The settings file of the embedded server, written anew at each start.
 * No TCP port is opened: the socket in a private folder is the only way in. A commit is on disk before it is answered.
 * Its log tells of the server and not of statements that failed: they and their rows may name a customer, and the program tells of them.
 * `wal_level = minimal` makes first loads faster and gives up replication, which one company on one machine has no use for.
 */
export function serverSettings(socketFolder: string, dataFolder: string): string {
  const settings: Readonly<Record<string, string>> = {
    listen_addresses: "",
    port: "5432",
    unix_socket_directories: quotedListEntry(socketFolder),
    unix_socket_permissions: "0700",
    fsync: "on",
    full_page_writes: "on",
    synchronous_commit: "on",
    shared_buffers: `${sharedBuffersMiB(totalmem())}MB`,
    max_wal_size: `${maxWalMiB(dataFolder)}MB`,
    checkpoint_timeout: "15min",
    maintenance_work_mem: "256MB",
    wal_level: "minimal",
    max_wal_senders: "0",
    max_connections: "60",
    client_connection_check_interval: process.platform === "linux" ? "1s" : "0", // a killed program's statement ends soon after it
    timezone: "UTC",
    log_timezone: "UTC",
    log_line_prefix: "%m [%p] ",
    log_min_messages: "log",
  };
  return Object.entries(settings)
    .map(([name, value]) => `${name} = '${value.replaceAll("'", "''")}'\n`)
    .join("");
}

/** A quarter of the memory, at most 1 GiB: beyond it the system's own cache serves as well. */
function sharedBuffersMiB(totalBytes: number): number {
  return Math.max(32, Math.min(1024, Math.floor(totalBytes / 4 / mebibyte)));
}

/** Large, so that a first load is not one checkpoint after another; never more than an eighth of the free disk. */
function maxWalMiB(dataFolder: string): number {
  const { bavail, bsize } = statfsSync(dataFolder);
  return Math.max(128, Math.min(4096, Math.floor((bavail * bsize) / 8 / mebibyte)));
}

/** The setting is a list separated by commas: a path that holds one, or a space, must be quoted inside it. */
function quotedListEntry(path: string): string {
  return `"${path.replaceAll('"', '""')}"`;
}
