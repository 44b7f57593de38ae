// The login under which the site serves: it reads and changes rows, and can neither make tables nor touch the change log.
import { randomBytes, scryptSync } from "node:crypto";

export interface SiteAddress {
  readonly role: string;
  readonly password: string;
  readonly url: string;
}

/** PostgreSQL cuts names off after so many bytes. */
const longestName = 63;
const ending = "_site";

/**
 * The site's login to a database, told from the owner's address. Its password follows from the owner's, so that several
 * sites on one database agree on it and none has to keep it, and slowly, so that the owner's cannot be guessed from it.
 * An owner who needs no password leaves none to derive from: then it is another one at each start.
 */
export function siteAddress(ownerUrl: string): SiteAddress {
  const address = new URL(ownerUrl);
  const database = decodeURIComponent(address.pathname.slice(1));
  const role = siteRole(database);
  const known = decodeURIComponent(address.password) || process.env.PGPASSWORD;
  const password = known
    ? scryptSync(known, `the site's login to ${database}`, 24, { N: 2 ** 15, r: 8, p: 1, maxmem: 64 * 1024 ** 2 })
    : randomBytes(24);
  address.username = encodeURIComponent(role);
  address.password = password.toString("hex");
  return { role, password: address.password, url: address.href };
}

export function siteRole(database: string): string {
  let start = database;
  while (Buffer.byteLength(start) > longestName - ending.length) start = [...start].slice(0, -1).join("");
  return `${start}${ending}`;
}
