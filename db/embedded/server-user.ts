import { spawnSync } from "node:child_process";
import { chownSync, readFileSync } from "node:fs";
import { EmbeddedServerError } from "./embedded-server-error";

/**
 * As whom the server runs. PostgreSQL refuses to run as root, so root either steps into a user namespace, where the
 * same files belong to an ordinary number, or hands the data folder to an account made for the purpose.
 */
export type ServerUser =
  | { readonly kind: "self" }
  | { readonly kind: "namespace"; readonly prefix: readonly string[] }
  | { readonly kind: "account"; readonly uid: number; readonly gid: number };

type Account = { readonly name: string; readonly uid: number; readonly gid: number };

/**
 * @param mustReach  a program and folders that the account has to be able to open, if an account is what is left
 * @param unshare    the program that makes user namespaces; a test names a missing one
 */
export function findServerUser(mustReach: readonly string[], unshare = "unshare"): ServerUser {
  if (process.getuid?.() !== 0) return { kind: "self" };
  const accounts = listedAccounts();
  const prefix = namespacePrefix(accounts, unshare);
  if (spawnSync(prefix[0] ?? unshare, [...prefix.slice(1), "true"], { stdio: "ignore" }).status === 0) {
    return { kind: "namespace", prefix };
  }
  const account = accounts.find(({ name }) => name === "postgres");
  if (account !== undefined && mustReach.every((path) => canReach(account, path))) {
    return { kind: "account", uid: account.uid, gid: account.gid };
  }
  throw new EmbeddedServerError(
    'PostgreSQL refuses to run as root, and this machine allows neither user namespaces nor a "postgres" account that can open this folder. Run the command as an ordinary user, or set DATABASE_URL to a PostgreSQL server of your own (15 or newer).',
  );
}

/** Makes a file or folder the server's own where it runs under another account; otherwise nothing is needed. */
export function giveToServer(user: ServerUser, path: string): void {
  if (user.kind === "account") chownSync(path, user.uid, user.gid);
}

/** initdb looks its own number up in the list of accounts and gives up when it is not there: so take a listed one. */
function namespacePrefix(accounts: readonly Account[], unshare: string): readonly string[] {
  const ordinary = accounts.filter(({ uid }) => uid !== 0);
  const chosen = ordinary.find(({ uid }) => uid === 1000) ?? ordinary.find(({ uid }) => uid !== 65534) ?? ordinary[0];
  const number = chosen?.uid ?? 1000;
  return [unshare, "--user", `--map-user=${number}`, `--map-group=${number}`, "--"];
}

function canReach(account: Account, path: string): boolean {
  const { uid, gid } = account;
  return spawnSync("test", ["-x", path], { uid, gid, stdio: "ignore" }).status === 0;
}

function listedAccounts(): readonly Account[] {
  try {
    return readFileSync("/etc/passwd", "utf8")
      .split("\n")
      .flatMap((line) => {
        const [name, , uid, gid] = line.split(":");
        return name && uid && gid ? [{ name, uid: Number(uid), gid: Number(gid) }] : [];
      });
  } catch {
    return [];
  }
}
