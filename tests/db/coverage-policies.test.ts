import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadAllPolicies } from "@/db/queries/policies";
import { findPolicyDraft, findPolicyVersion } from "@/db/queries/policy-versions";
import { type Published, publishPolicy, retirePolicy } from "@/db/writes/coverage/publish-policy";
import { beginPolicyDraft, savePolicyDraft } from "@/db/writes/coverage/save-policy-draft";
import { samplePolicy } from "../coverage/sample-policy";
import { asDatabaseOwner } from "../own-database";
import { fileFolder, shopDocument, startAfresh } from "./intake-files";
import { problems } from "./load-outcome";

beforeEach(async () => {
  await startAfresh();
  await asDatabaseOwner("truncate policy_drafts, policies cascade");
});
const files = fileFolder();
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const document = (changes: object = {}): Readonly<Record<string, unknown>> => {
  const { version: _, ...rest } = samplePolicy({ maker: "Maker" });
  return { ...JSON.parse(JSON.stringify(rest)), ...changes };
};

async function publish(changes: object = {}): Promise<Published> {
  const draftId = (await beginPolicyDraft(undefined, "Robin")) ?? 0;
  expect(await savePolicyDraft({ draftId, revision: 1, document: document(changes), by: "Robin" })).toEqual({
    kind: "saved",
  });
  return await publishPolicy({ draftId, revision: 2, by: "Robin" });
}

const spans = async () =>
  (await readOnly(loadAllPolicies)).map(({ policy }) => [policy.version, policy.effectiveFrom, policy.effectiveTo]);

test("a later version closes the one that ran without end, whose document stays as it was approved", async () => {
  expect(await publish()).toEqual({ kind: "published", key: "maker-standard", version: 1 });
  const before = await readOnly((db) => db.rows(sql`select document, document_sha256 from policies`));
  expect(await publish({ effectiveFrom: "2026-06-01" })).toMatchObject({ kind: "published", version: 2 });
  expect(await spans()).toEqual([
    [1, "1900-01-01", "2026-05-31"],
    [2, "2026-06-01", undefined],
  ]);
  expect(
    await readOnly((db) => db.rows(sql`select document, document_sha256 from policies where version = 1`)),
  ).toEqual(before);
});

test("sale dates that another version governs are refused in a sentence, and nothing is stored", async () => {
  await publish({ effectiveFrom: "2024-01-01", effectiveTo: "2024-12-31" });
  expect(await publish({ effectiveFrom: "2024-12-31" })).toEqual({
    kind: "overlaps",
    sentence:
      "The sale dates from 31 Dec 2024 with no end overlap those of version 1 (from 1 Jan 2024 to 31 Dec 2024). Change the first or last sale day, or retire the other version.",
  });
  expect(await spans()).toHaveLength(1);
  expect(await publish({ effectiveFrom: "2025-01-01" })).toMatchObject({ kind: "published", version: 2 });
});

test("a retired version decides nothing, keeps its document, and makes room", async () => {
  await publish({ effectiveFrom: "2024-01-01", effectiveTo: "2024-12-31" });
  const retiring = { key: "maker-standard", version: 1, by: "Robin", reason: "Read from the wrong edition." };
  expect(await retirePolicy(retiring)).toBe(true);
  expect(await retirePolicy(retiring)).toBe(false);
  expect(await spans()).toEqual([]);
  expect(await readOnly((db) => findPolicyVersion(db, "maker-standard", 1))).toMatchObject({
    retired: { by: "Robin", reason: "Read from the wrong edition." },
  });
  expect(await publish({ effectiveFrom: "2024-06-01" })).toMatchObject({ kind: "published", version: 2 });
  await expect(retirePolicy({ ...retiring, version: 2, reason: " " })).rejects.toThrow(RangeError);
});

test("the version that it had closed runs on, up to the next one that stands", async () => {
  await publish();
  await publish({ effectiveFrom: "2024-01-01" });
  await publish({ effectiveFrom: "2025-01-01" });
  const told = { key: "maker-standard", by: "Robin", reason: "A mistake." };
  await retirePolicy({ ...told, version: 2 });
  expect(await spans()).toEqual([
    [1, "1900-01-01", "2024-12-31"],
    [3, "2025-01-01", undefined],
  ]);
  await retirePolicy({ ...told, version: 3 });
  expect(await spans()).toEqual([[1, "1900-01-01", undefined]]);
});

test("two who publish for the same days at once: one does, the other is told why not", async () => {
  const drafts = await Promise.all(
    [1, 2].map(async () => {
      const draftId = (await beginPolicyDraft(undefined, "Robin")) ?? 0;
      await savePolicyDraft({ draftId, revision: 1, document: document(), by: "Robin" });
      return draftId;
    }),
  );
  const results = await Promise.all(drafts.map((draftId) => publishPolicy({ draftId, revision: 2, by: "Robin" })));
  expect(results.map(({ kind }) => kind).sort()).toEqual(["overlaps", "published"]);
  expect(await spans()).toHaveLength(1);
});

test("what was changed since the review is not published unseen", async () => {
  const draftId = (await beginPolicyDraft(undefined, "Robin")) ?? 0;
  await savePolicyDraft({ draftId, revision: 1, document: document(), by: "Robin" });
  await savePolicyDraft({ draftId, revision: 2, document: document({ name: "Other" }), by: "Kim" });
  expect(await publishPolicy({ draftId, revision: 2, by: "Robin" })).toEqual({ kind: "changed since", by: "Kim" });
  expect(await spans()).toEqual([]);
});

test("a saving over somebody else's is kept apart, so nothing that was typed is lost", async () => {
  const draftId = (await beginPolicyDraft(undefined, "Robin")) ?? 0;
  await savePolicyDraft({ draftId, revision: 1, document: { name: "First" }, by: "Robin" });
  const late = await savePolicyDraft({ draftId, revision: 1, document: { name: "Second" }, by: "Kim" });
  if (late.kind !== "kept apart") throw new Error(late.kind);
  expect((await readOnly((db) => findPolicyDraft(db, late.draftId)))?.document).toEqual({ name: "Second" });
  expect((await readOnly((db) => findPolicyDraft(db, draftId)))?.document).toEqual({ name: "First" });
});

test("a draft from a version has its terms, and needs a document and an approval of its own", async () => {
  await publish();
  const [stored] = await readOnly(loadAllPolicies);
  const draftId = (await beginPolicyDraft(stored?.policyId, "Robin")) ?? 0;
  const refused = await publishPolicy({ draftId, revision: 1, by: "Robin" });
  expect(refused.kind === "problems" ? refused.problems.map(({ pointer }) => pointer) : []).toEqual([
    "/sourceDocument",
    "/approvedBy",
    "/approvedOn",
  ]);
});

test.each([
  ["an effective day that is none", { effectiveFrom: "2025-02-30" }, "/effectiveFrom"],
  [
    "a class that the terms name and nobody listed",
    { terms: [{ covers: { kind: "class", class: "none" }, pays: ["parts"], term: { n: 1, unit: "year" } }] },
    "/terms/0/covers/class",
  ],
])("%s stays a draft, with its place", async (_name, changes, pointer) => {
  const refused = await publish(changes);
  expect(refused.kind === "problems" ? refused.problems.map((problem) => problem.pointer) : []).toEqual([pointer]);
  expect(await spans()).toEqual([]);
});

test("a file whose version overlaps one that stands, or another of the same file, is refused at its place", async () => {
  await files.load(JSON.stringify(shopDocument));
  await publish({ effectiveFrom: "2024-01-01" });
  const file = (...versions: readonly object[]) =>
    files.load(
      JSON.stringify({ schema: "ohmsworth/policies/1", policies: versions.map((changes) => document(changes)) }),
    );
  expect(problems(await file({ version: 2, effectiveFrom: "2025-01-01" }))).toEqual([
    expect.stringContaining("/effectiveFrom overlaps the sale dates of version 1, from 2024-01-01 with no end"),
  ]);
  const other = { key: "other", effectiveTo: "2023-12-31" };
  expect(problems(await file({ ...other, version: 1 }, { ...other, version: 2, effectiveFrom: "2023-12-31" }))).toEqual(
    [expect.stringContaining("/effectiveFrom overlaps the sale dates of version 1, from 1900-01-01 to 2023-12-31")],
  );
});
