import { afterAll, beforeAll, expect, test } from "vitest";
import { todayIn } from "@/app/_clock/today";
import { keptAnswers } from "@/app/repeats/kept-answers";
import { keptViews } from "@/app/repeats/kept-views";
import { loadFailureRates } from "@/app/repeats/load-failure-rates";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadJobList } from "@/db/queries/job-list";
import { loadShop } from "@/db/queries/shop";
import { editJob } from "@/db/writes/edit-job";
import { writeTechnicianNote } from "@/db/writes/signals/technician-note";
import { takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1"), unit("A2")]));
  await files.load(csv([job("J1", "A1")]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

/** Counts how often it is worked out, and what came of it. */
function counted() {
  const kept = keptAnswers<number>();
  const done = { times: 0 };
  const ask = (question: string) =>
    kept(question, async (db) => {
      done.times += 1;
      const { total } = await loadJobList(db, {}, { offset: 0, limit: 1 });
      return () => total;
    });
  return { ask, done };
}

test("an answer is worked out once for many who ask at once, and anew after a load and after an edit by hand", async () => {
  const { ask, done } = counted();
  const answers = await Promise.all(Array.from({ length: 10 }, () => ask("all")));
  expect(new Set(answers).size).toBe(1);
  expect(done.times).toBeLessThanOrEqual(1);
  await ask("another question");
  expect(done.times).toBe(2);
  await files.load(csv([job("J2", "A2")]));
  expect(await ask("all")).toBe((answers[0] ?? 0) + 1);
  expect(done.times).toBe(3);
  await editJob({ jobNumber: "J2", column: "cause_note", value: "worn", by: "Kim", reason: "as the note says" });
  await ask("all");
  expect(done.times).toBe(4);
});

// Each way in which a job or what it is divided by changes, against the same question asked past what is kept.
test("rates never lag behind: load, edit, taking back, a fact of a unit and a setting show at once", async () => {
  const values = { by: "component" };
  const plain = async () =>
    await readOnly(async (db) => loadFailureRates(db, values, todayIn((await loadShop(db)).timeZone)));
  const shown: string[] = [];
  const check = async (change: () => Promise<unknown>) => {
    await change();
    const view = await keptViews.rates(values);
    expect(view).toEqual(await plain());
    shown.push(JSON.stringify(view.kind === "rates" && view.rates));
  };
  await check(async () => undefined);
  const loaded = batchOf(await files.load(csv([job("J3", "A1")])));
  await check(async () => loaded);
  await check(() =>
    editJob({ jobNumber: "J1", column: "component", value: "door_lock", by: "Kim", reason: "misread" }),
  );
  await check(() => takeBack(loaded));
  await check(async () => batchOf(await files.load(csv([unit("A3")]))));
  await check(() => files.load(JSON.stringify({ ...shopDocument, recordsFrom: "2021-06-01" }), "add", "shop.json"));
  for (const [i, one] of shown.entries()) if (i > 0) expect(one, `change ${i}`).not.toBe(shown[i - 1]);
});

test("what is said of stock, money or a signal leaves answers as they are", async () => {
  const { ask, done } = counted();
  await ask("all");
  await writeTechnicianNote({
    maker: "Hearth-Wick",
    modelNumber: undefined,
    serials: undefined,
    component: undefined,
    words: "Look at the clamp.",
    signalKey: undefined,
    by: "Kim",
  });
  await ask("all");
  expect(done.times).toBe(1);
});

test("a failure is not kept", async () => {
  const kept = keptAnswers<string>();
  const failing = () => kept("q", () => Promise.reject(new Error("not now")));
  await expect(failing()).rejects.toThrow("not now");
  expect(await kept("q", async () => () => "now")).toBe("now");
});
