import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import type { Reader } from "../database-types";

/** A link that was once seen to be the last, kept where whoever alters the database does not reach. */
export interface ChainHead {
  readonly link: number;
  readonly sha256: string;
}

export type ChainState =
  | { readonly kind: "whole"; readonly links: number; readonly head: ChainHead | undefined }
  /** The first place where the chain does not hold, and what is wrong there. */
  | { readonly kind: "broken"; readonly link: number; readonly sentence: string };

const atOnce = 5000;

/**
 * Computes the hash of every link anew, in another language than the database did. Whoever rewrites the whole chain from
 * some link on leaves it whole in itself: that is seen only by heads that were kept elsewhere.
 * @param heads  kept earlier, in any order
 */
export async function checkChangeChain(db: Reader, heads: readonly ChainHead[]): Promise<ChainState> {
  const wanted = new Map(heads.map(({ link, sha256 }) => [link, sha256]));
  let head: ChainHead = { link: 0, sha256: "" };
  for (let rows = await linksAfter(db, 0); rows.length > 0; rows = await linksAfter(db, head.link)) {
    for (const row of rows) {
      const wrong = wrongWith(row, head) ?? notAsKept(row, wanted);
      if (wrong !== undefined) return { kind: "broken", link: head.link + 1, sentence: wrong };
      head = { link: row.link, sha256: row.sha256 };
    }
  }
  return (
    (await missingAtTheEnd(db, head, heads)) ?? {
      kind: "whole",
      links: head.link,
      head: head.link === 0 ? undefined : head,
    }
  );
}

interface Link extends Record<string, unknown> {
  readonly link: number;
  readonly sha256: string;
  readonly changeId: string;
  /** Null where the entry is gone. */
  readonly at: string | null;
  readonly by: string;
  readonly tableName: string;
  readonly key: string;
  readonly what: string;
  readonly rows: string;
  readonly width: number;
  readonly rowSha256: string;
}

function wrongWith(row: Link, before: ChainHead): string | undefined {
  const { link } = row;
  if (link !== before.link + 1)
    return link === before.link + 2
      ? `Link ${before.link + 1} is missing.`
      : `Links ${before.link + 1} to ${link - 1} are missing.`;
  if (row.at === null) return `The entry ${row.changeId} of link ${link} is missing.`;
  const { changeId, at, by, tableName, key, what, rows, width, rowSha256 } = row;
  const text = [link, before.sha256, changeId, at, by, tableName, key, what, rows, width, rowSha256].join("\x1e");
  if (createHash("sha256").update(text).digest("hex") === row.sha256) return undefined;
  return `Link ${link}, of ${at}: its entry on ${tableName} is not the one that was chained, or the link itself was altered.`;
}

function notAsKept({ link, sha256 }: Link, wanted: ReadonlyMap<number, string>): string | undefined {
  const kept = wanted.get(link);
  return kept === undefined || kept === sha256
    ? undefined
    : `Link ${link} is not the one that was kept with a backup: the chain was written anew, from this link on or from an earlier one.`;
}

async function missingAtTheEnd(
  db: Reader,
  head: ChainHead,
  heads: readonly ChainHead[],
): Promise<ChainState | undefined> {
  const last = Math.max(0, ...heads.map(({ link }) => link));
  if (last > head.link) {
    const sentence = `The chain ends at link ${head.link}, and a backup holds link ${last}: the last ones were removed, or an older state was restored.`;
    return { kind: "broken", link: head.link + 1, sentence };
  }
  const [loose] = await db.rows<{ id: string }>(sql`
    select change_id::text as id from change_log l where not exists (select from change_chain c where c.change_id = l.change_id) order by change_id limit 1`);
  if (loose === undefined) return undefined;
  return {
    kind: "broken",
    link: head.link + 1,
    sentence: `Entry ${loose.id} of the log stands in no link of the chain.`,
  };
}

function linksAfter(db: Reader, link: number): Promise<Link[]> {
  return db.rows<Link>(sql`
    select c.link::double precision as link, c.sha256, c.change_id::text as "changeId", to_char(l.at, 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"') as at,
      l.by, l.table_name as "tableName", l.key, l.what, l.rows::text as rows, l.width, l.row_sha256 as "rowSha256"
    from change_chain c left join change_log l using (change_id) where c.link > ${link} order by c.link limit ${atOnce}`);
}
