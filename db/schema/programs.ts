// Other programs that send jobs: who may, and what they were already answered.
import { sql } from "drizzle-orm";
import { check, index, integer, jsonb, pgTable, primaryKey, text, unique, uuid, varchar } from "drizzle-orm/pg-core";
import type { KeyScope } from "@/lib/people/key-scope";
import { instantColumn } from "./columns";

/** Only the hash of a key is kept; the key itself is shown once, when it is made. */
export const apiKeys = pgTable(
  "api_keys",
  {
    keyId: integer("key_id").primaryKey().generatedAlwaysAsIdentity(),
    name: text("name").notNull(),
    scope: text("scope").$type<KeyScope>().notNull(),
    keySha256: varchar("key_sha256", { length: 64 }).notNull(),
    createdAt: instantColumn("created_at").notNull(),
    /** Who made it; empty for those of before people signed in. */
    madeBy: text("made_by").notNull().default(""),
    /** From then on it opens nothing; null for those that were made without an end. */
    expiresAt: instantColumn("expires_at"),
    lastUsedAt: instantColumn("last_used_at"),
    revokedAt: instantColumn("revoked_at"),
  },
  (table) => [
    unique("api_keys_one_hash").on(table.keySha256),
    check("api_keys_known_scope", sql`${table.scope} in ('jobs', 'read')`),
    check("api_keys_hashed", sql`${table.keySha256} ~ '^[0-9a-f]{64}$'`),
  ],
);

/** What each request with an idempotency key asked, and its answer: whoever asks again gets the same. */
export const idempotencyKeys = pgTable(
  "idempotency_keys",
  {
    route: text("route").notNull(),
    key: text("key").notNull(),
    requestSha256: varchar("request_sha256", { length: 64 }).notNull(),
    state: text("state").$type<"running" | "done">().notNull(),
    /** Which run holds it: only that run can store the answer, together with what it did. */
    run: uuid("run").notNull(),
    /** A run that has not answered by then has died, and the next request takes over. */
    runUntil: instantColumn("run_until").notNull(),
    status: integer("status"),
    answer: jsonb("answer"),
    expiresAt: instantColumn("expires_at").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.route, table.key] }),
    index("idempotency_keys_by_expiry").on(table.expiresAt),
    check("idempotency_keys_known_state", sql`${table.state} in ('running', 'done')`),
    check(
      "idempotency_keys_done_has_answer",
      sql`(${table.state} = 'done') = (${table.status} is not null and ${table.answer} is not null)`,
    ),
  ],
);
