import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { Lanes } from "@/db/writes/bulk/lanes";

const command = (text: string) => inTransaction(async (tx) => void (await tx.execute(sql.raw(text))));

afterAll(async () => {
  await command("drop table if exists staging.steps");
  await closeDatabase();
});
beforeEach(() =>
  command("drop table if exists staging.steps; create table staging.steps (at serial, step text check (step <> 'no'))"),
);

const step = (name: string) => `insert into staging.steps (step) values ('${name}')`;
const slow = (name: string) => [step(name), "select pg_sleep(0.2)"] as const;

async function steps() {
  return (await readOnly((db) => db.rows<{ step: string }>(sql`select step from staging.steps order by at`))).map(
    (each) => each.step,
  );
}

test("what somebody waits for comes before what nobody waits for yet", async () => {
  const lanes = new Lanes({ timeoutSeconds: 60 });
  for (const name of ["first", "second"]) lanes.run(...slow(name));
  for (const name of ["later", "last"]) lanes.runLater(...slow(name));
  await lanes.run(step("sooner"));
  await lanes.settled();
  const order = await steps();
  expect([...order].toSorted()).toEqual(["first", "last", "later", "second", "sooner"]);
  expect(order.indexOf("sooner")).toBeLessThan(order.indexOf("last"));
});

test("a piece that fails leaves nothing of itself, and all are told", async () => {
  const lanes = new Lanes({ timeoutSeconds: 60 });
  lanes.runLater(step("good"));
  await expect(lanes.run(step("undone"), step("no"))).rejects.toThrow();
  await expect(lanes.settled()).rejects.toThrow();
  await lanes.end();
  expect(await steps()).toEqual(["good"]);
});

test("once it ends what is under way is waited for, and nothing more begins", async () => {
  const lanes = new Lanes({ timeoutSeconds: 60 });
  for (const name of ["a", "b", "c", "d"]) lanes.runLater(...slow(name));
  await lanes.end();
  expect((await steps()).toSorted()).toEqual(["a", "b"]);
});
