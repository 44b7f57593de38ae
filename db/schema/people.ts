// Who may sign in, and what proves it. Passwords, links and recovery codes are kept as hashes only.
import { sql } from "drizzle-orm";
import {
  bigint,
  boolean,
  check,
  index,
  integer,
  pgTable,
  primaryKey,
  text,
  timestamp,
  unique,
  varchar,
} from "drizzle-orm/pg-core";
import type { Role } from "@/lib/people/role";
import type { SignInOutcome } from "@/lib/people/sign-in-outcome";
import { instantColumn } from "./columns";

/** The library for signing in reads and writes these three tables itself, with instants as JavaScript dates. */
const dateColumn = (name: string) => timestamp(name, { withTimezone: true, mode: "date" });

const knownRole = sql`('technician', 'administrator', 'manager', 'owner', 'reader')`;

/** Nobody is ever deleted: what they did keeps their name. Whoever was taken off cannot sign in. */
export const people = pgTable(
  "people",
  {
    id: varchar("id", { length: 36 }).primaryKey(),
    name: text("name").notNull(),
    /** In small letters. */
    email: text("email").notNull(),
    emailVerified: boolean("email_verified").notNull().default(false),
    image: text("image"),
    createdAt: dateColumn("created_at").notNull(),
    updatedAt: dateColumn("updated_at").notNull(),
    role: text("role").$type<Role>().notNull(),
    /** The name under which this technician's jobs are written. */
    technician: text("technician"),
    /** One of the invented company's people; such a person signs in only while the data is invented. */
    demo: boolean("demo").notNull().default(false),
    endedAt: dateColumn("ended_at"),
  },
  (table) => [
    unique("people_one_email").on(table.email),
    check("people_known_role", sql`${table.role} in ${knownRole}`),
    check("people_email_small", sql`${table.email} = lower(${table.email})`),
    check("people_have_name", sql`btrim(${table.name}) <> ''`),
  ],
);

export const sessions = pgTable(
  "sessions",
  {
    id: varchar("id", { length: 36 }).primaryKey(),
    token: text("token").notNull(),
    userId: varchar("person_id", { length: 36 })
      .notNull()
      .references(() => people.id),
    expiresAt: dateColumn("expires_at").notNull(),
    createdAt: dateColumn("created_at").notNull(),
    updatedAt: dateColumn("updated_at").notNull(),
    ipAddress: text("ip_address"),
    userAgent: text("user_agent"),
    /** When it was last used, to the minute. */
    seenAt: dateColumn("seen_at"),
    /** Whether the second factor is still to be shown; until then the session opens nothing. */
    halfSignedIn: boolean("half_signed_in").notNull().default(false),
  },
  (table) => [unique("sessions_one_token").on(table.token), index("sessions_by_person").on(table.userId)],
);

/** How somebody proves who they are; here always by a password. */
export const credentials = pgTable(
  "credentials",
  {
    id: varchar("id", { length: 36 }).primaryKey(),
    accountId: text("account_id").notNull(),
    providerId: text("provider_id").notNull(),
    userId: varchar("person_id", { length: 36 })
      .notNull()
      .references(() => people.id),
    password: text("password"),
    createdAt: dateColumn("created_at").notNull(),
    updatedAt: dateColumn("updated_at").notNull(),
  },
  (table) => [unique("credentials_one_of_a_kind").on(table.userId, table.providerId)],
);

/** A link that lets one person in once: a new one with a role, or one who needs a new password. */
export const invitations = pgTable(
  "invitations",
  {
    invitationId: integer("invitation_id").primaryKey().generatedAlwaysAsIdentity(),
    tokenSha256: varchar("token_sha256", { length: 64 }).notNull(),
    email: text("email").notNull(),
    name: text("name").notNull(),
    role: text("role").$type<Role>().notNull(),
    technician: text("technician"),
    /** Set where the link gives somebody who is here already a new password. */
    personId: varchar("person_id", { length: 36 }).references(() => people.id),
    madeBy: text("made_by").notNull(),
    createdAt: instantColumn("created_at").notNull(),
    expiresAt: instantColumn("expires_at").notNull(),
    usedAt: instantColumn("used_at"),
    endedAt: instantColumn("ended_at"),
  },
  (table) => [
    unique("invitations_one_hash").on(table.tokenSha256),
    check("invitations_hashed", sql`${table.tokenSha256} ~ '^[0-9a-f]{64}$'`),
    check("invitations_known_role", sql`${table.role} in ${knownRole}`),
    check("invitations_end_later", sql`${table.expiresAt} > ${table.createdAt}`),
    check("invitations_used_or_ended", sql`${table.usedAt} is null or ${table.endedAt} is null`),
  ],
);

/** Wrong tries by account and place, device, or account alone; the subject is a hash and names nobody. */
export const signInTries = pgTable(
  "sign_in_tries",
  {
    subject: varchar("subject", { length: 64 }).primaryKey(),
    count: integer("count").notNull(),
    lastAt: instantColumn("last_at").notNull(),
  },
  (table) => [
    index("sign_in_tries_by_time").on(table.lastAt),
    check("sign_in_tries_hashed", sql`${table.subject} ~ '^[0-9a-f]{64}$'`),
    check("sign_in_tries_some", sql`${table.count} >= 1`),
  ],
);

/** What came of each try to sign in, for the owner to look through; gone after a year (see db/retention). Only ever added to. */
export const signIns = pgTable(
  "sign_ins",
  {
    signInId: bigint("sign_in_id", { mode: "number" }).primaryKey().generatedAlwaysAsIdentity(),
    at: instantColumn("at").notNull().default(sql`now()`),
    /** Nobody where the address that was typed is nobody's here; what was typed is not kept, since it may be a password. */
    personId: varchar("person_id", { length: 36 }).references(() => people.id),
    outcome: text("outcome").$type<SignInOutcome>().notNull(),
    /** Address of the network that it came from, as far as that is known. */
    cameFrom: text("came_from").notNull(),
    /** Whether this person had signed in from the device before. */
    knownDevice: boolean("known_device").notNull(),
  },
  (table) => [
    index("sign_ins_by_time").on(table.at),
    check(
      "sign_ins_known_outcome",
      sql`${table.outcome} in ('signed in', 'password shown', 'no match', 'wrong code', 'held back', 'signed out')`,
    ),
  ],
);

/** What somebody's authenticator program shares with us, sealed with the server's secret. */
export const secondFactors = pgTable("second_factors", {
  personId: varchar("person_id", { length: 36 })
    .primaryKey()
    .references(() => people.id),
  sealedSecret: text("sealed_secret").notNull(),
  createdAt: instantColumn("created_at").notNull(),
  /** Once the first code was right; until then it is asked of nobody. */
  confirmedAt: instantColumn("confirmed_at"),
  /** The half-minute of the last code that was taken: neither it nor one before it is taken again. */
  lastStep: integer("last_step").notNull().default(0),
});

/** For the day on which the phone is lost: each opens once. */
export const recoveryCodes = pgTable(
  "recovery_codes",
  {
    personId: varchar("person_id", { length: 36 })
      .notNull()
      .references(() => people.id),
    codeSha256: varchar("code_sha256", { length: 64 }).notNull(),
    usedAt: instantColumn("used_at"),
  },
  (table) => [
    primaryKey({ columns: [table.personId, table.codeSha256] }),
    check("recovery_codes_hashed", sql`${table.codeSha256} ~ '^[0-9a-f]{64}$'`),
  ],
);
