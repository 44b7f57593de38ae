import { Client } from "pg";
import { migrationLock } from "../migrate";
import { grantSiteRights } from "./grant-site-rights";
import { scramVerifier } from "./scram-verifier";
import { siteAddress } from "./site-address";
import { tooManyRights } from "./too-many-rights";

export type SiteLogin =
  | { readonly kind: "apart"; readonly url: string }
  /** The site has to serve as the owner of the tables. */
  | { readonly kind: "owner"; readonly url: string; readonly reason: string };

/** A role of the same name that somebody else made is theirs. */
const mark = "The login of an Ohmsworth site";

/**
 * Makes the login of the site if need be, gives it its rights in the schema as it stands, and tries it. To be called by
 * the owner of the tables once they are at this program's schema.
 * @returns the address to serve with; the owner's own, and why, where the server does not let us
 */
export async function prepareSiteRole(ownerUrl: string): Promise<SiteLogin> {
  const { role, password, url } = siteAddress(ownerUrl);
  const client = new Client({ connectionString: ownerUrl, application_name: "ohmsworth migrate" });
  client.on("error", () => {}); // the statement in hand reports it
  try {
    await client.connect();
    await client.query("select pg_advisory_lock($1)", [migrationLock]);
    await makeRole(client, role, password);
    await grantSiteRights(client, role);
    await tryLogin(url, role);
    return { kind: "apart", url };
  } catch (error) {
    return { kind: "owner", url: ownerUrl, reason: error instanceof Error ? error.message : String(error) };
  } finally {
    await client.end().catch(() => {}); // gives the lock back
  }
}

async function makeRole(client: Client, role: string, password: string): Promise<void> {
  const name = client.escapeIdentifier(role);
  const kept = client.escapeLiteral(scramVerifier(password));
  const { rows } = await client.query<{ comment: string | null }>(
    "select shobj_description(oid, 'pg_authid') as comment from pg_roles where rolname = $1",
    [role],
  );
  const [found] = rows;
  if (found === undefined) {
    await client.query(`start transaction; create role ${name} login password ${kept};
      comment on role ${name} is ${client.escapeLiteral(mark)}; commit`);
  } else if (found.comment === mark) {
    await client.query(`alter role ${name} login password ${kept}`);
  } else {
    throw new Error(`the role ${role} is there already and is not Ohmsworth's`);
  }
}

/** A server may refuse a new login by its own rules, and what everybody may do there counts for it too. */
async function tryLogin(url: string, role: string): Promise<void> {
  const site = new Client({
    connectionString: url,
    application_name: "ohmsworth migrate",
    connectionTimeoutMillis: 10_000,
  });
  site.on("error", () => {}); // the statement in hand reports it
  try {
    await site.connect();
    const [first] = await tooManyRights(async (text) => (await site.query(text)).rows);
    if (first !== undefined) throw new Error(`the role ${role} ${first}`);
  } finally {
    await site.end().catch(() => {});
  }
}
