// How long an answer takes must not tell whether a name is known here, or whether a number is another's or nobody's. Time
// cannot be asserted on a busy machine, so what is held is the work: the same hashes and the same statements. `npm run
// bench -- equal-times` prints the times themselves.
import crypto from "node:crypto";
import { syncBuiltinESMExports } from "node:module";
import { Client } from "pg";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { loadSignedIn } from "@/app/_people/load-signed-in";
import { mayCallOnJob } from "@/app/_people/may-call";
import { isOwnJob } from "@/app/_people/may-open";
import { signInByPassword } from "@/app/_people/sign-in";
import { closeDatabase } from "@/db/close-database";
import { openJob } from "@/db/writes/sheets/open-job";
import { day } from "@/lib/calendar/day";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "../intake-files";
import { headersAs, somebody, testPassword } from "./signed-in";
import { openBrowser } from "./stand-in-browser";

vi.mock("next/headers", async () => (await import("./stand-in-browser")).nextHeaders);

const files = fileFolder();
beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify({ ...shopDocument, demo: false }));
  await files.load(csv([unit("A1")]));
  await files.load(csv([job("J1", "A1", { technician: "Lou" })]));
  const open = { serial: "A-1", symptom: "will_not_drain", complaint: "", requestedOn: day("2025-06-01") } as const;
  await openJob({ ...open, jobNumber: "S1", technician: "Lou", payer: "maker", callbackOf: undefined });
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

interface Work {
  /** Settings of each scrypt, as text. */
  readonly hashes: readonly string[];
  /** Text of each statement, in order. */
  readonly statements: readonly string[];
}

/** What was asked of the processor and of the database meanwhile. */
async function workOf(act: () => Promise<unknown>): Promise<Work> {
  const hashes: string[] = [];
  const statements: string[] = [];
  const { scrypt } = crypto;
  const query: unknown = Client.prototype.query;
  if (typeof query !== "function") throw new Error("the driver has no query");
  crypto.scrypt = ((...words: Parameters<typeof scrypt>) => {
    hashes.push(JSON.stringify(words[3]));
    scrypt(...words);
  }) as typeof scrypt; // one of its forms, the one that is used
  syncBuiltinESMExports();
  Client.prototype.query = function (this: Client, ...words: unknown[]) {
    const [statement] = words as [string | { text: string }];
    statements.push(typeof statement === "string" ? statement : statement.text);
    return query.apply(this, words);
  } as typeof Client.prototype.query; // as above
  try {
    await act();
  } finally {
    crypto.scrypt = scrypt;
    syncBuiltinESMExports();
    Client.prototype.query = query as typeof Client.prototype.query;
  }
  return { hashes, statements };
}

describe("a wrong password", () => {
  const tryWith = (email: string) =>
    workOf(async () => {
      expect(await signInByPassword({ email, password: `not ${testPassword}` })).toEqual({ kind: "no match" });
    });
  /** Without the transaction that reads the password itself: a millisecond or two beside a hash of some hundred. */
  const butForThePassword = ({ statements }: Work) => {
    const at = statements.findIndex((each) => each.includes('from "credentials"'));
    return at < 0 ? statements : statements.toSpliced(at - 1, 3);
  };

  test("takes one hash of the same cost and the same statements but one, whether the address is known or not", async () => {
    openBrowser({ "ohmsworth-peer": "10.8.0.1" });
    const { email } = await somebody("reader");
    await tryWith(email); // all that is made once is made
    const [known, unknown] = [await tryWith(email), await tryWith("nobody@nowhere.example")];
    expect(known.hashes).toHaveLength(1);
    expect(unknown.hashes).toEqual(known.hashes);
    expect(known.statements.length - unknown.statements.length).toBe(3); // begin, read, commit
    expect(unknown.statements).toEqual(butForThePassword(known));
  });
});

describe("another's job", () => {
  test.each(["J1", "S1"])("%s takes a technician the same statements as one that never was", async (number) => {
    const request = new Request("http://localhost/", { headers: await headersAs("technician", "Kit") });
    const kit = await loadSignedIn(request.headers);
    if (kit === undefined) throw new Error("Kit is not signed in");
    for (const ask of [
      (asked: string) => mayCallOnJob(request, "GET /jobs/[number]/photos/[id]", asked),
      (asked: string) => isOwnJob(kit, asked), // what a page asks of the number, once it knows who opens it
    ]) {
      await ask(number);
      const [others, nobodys] = [await workOf(() => ask(number)), await workOf(() => ask("J9"))];
      expect(others.statements.length).toBeGreaterThan(2);
      expect(nobodys).toEqual(others);
    }
  });
});
