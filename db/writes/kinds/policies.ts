import { createHash } from "node:crypto";
import { normalised } from "@/lib/domain/normalised";
import type { Policy } from "@/lib/domain/policy";
import { parsePolicy } from "@/lib/intake/parse-policy";
import { flagRows } from "../staging/flag-rows";
import { run } from "../staging/run";
import { type ReadColumn, type StagedValue, stagedKind } from "../staging/staged-kind";
import { storeMakers } from "./models-of-rows";

const once = (name: string, type: string, value: (policy: Policy) => StagedValue): ReadColumn<Policy> => ({
  name,
  type,
  from: name,
  use: "once",
  value,
});

/** Policies are published version by version; a published version is never edited, since claims quote it. */
export const policiesKind = stagedKind<Policy>({
  kind: "policies",
  parse(document) {
    const read = parsePolicy(document);
    if (read.ok) return { ok: true, value: read.policy };
    const fix = "Correct it as described at /files/columns.";
    return {
      ok: false,
      problems: read.problems.map(({ pointer, problem }) => ({ column: pointer, value: "", problem, fix })),
    };
  },
  columns: [
    { name: "maker", type: "text", from: "maker", use: "help", value: (policy) => policy.maker },
    {
      name: "maker_n",
      type: "text",
      from: "maker",
      use: "help",
      value: (policy) => (policy.maker === undefined ? undefined : normalised(policy.maker)),
    },
    once("key", "text", (policy) => policy.key),
    once("version", "integer", (policy) => policy.version),
    once("name", "text", (policy) => policy.name),
    once("effective_from", "date", (policy) => policy.effectiveFrom),
    once("effective_to", "date", (policy) => policy.effectiveTo),
    once("document", "jsonb", (policy) => JSON.stringify(policy)),
    once("document_sha256", "text", (policy) => createHash("sha256").update(JSON.stringify(policy)).digest("hex")),
    once("source_document", "text", (policy) => policy.sourceDocument),
    once("approved_by", "text", (policy) => policy.approvedBy),
  ],
  derived: ["maker_id integer"],
  target: { table: "policies", key: ["key", "version"], onInsert: { maker_id: "s.maker_id", published_at: "now()" } },
  named: { column: "key", noun: "policy version" },
  async resolve() {},
  async check(tx, staged) {
    await flagRows(
      tx,
      staged,
      `select s.row, '/version', s.version::text, 'is already published with other terms', 'Give the changed terms the next version; a published one is never edited.'
       from ${staged.table} s join policies p using (key, version) where s.readable and p.document_sha256 <> s.document_sha256`,
    );
    await flagRows(tx, staged, overlapsOf(staged.table));
  },
  async prepare(tx, staged) {
    await storeMakers(tx, staged, "s.fate = 'new' and s.maker_n is not null");
    await run(tx, `update ${staged.table} s set maker_id = k.maker_id from makers k where k.normalised = s.maker_n`);
  },
  recounts: "nothing",
});

/** No sale date may lie under two versions of one policy, whether the other one is stored or stands in the same file. */
function overlapsOf(table: string): string {
  const others = `select key, version, effective_from, least(effective_to, closed_on) as effective_to from policies where retired_at is null
    union select key, version, effective_from, effective_to from ${table} where readable`;
  return `select s.row, '/effectiveFrom', s.effective_from::text,
      'overlaps the sale dates of version ' || min(o.version) || ', from ' || min(o.effective_from) || coalesce(' to ' || max(o.effective_to), ' with no end'),
      'Change the first or last sale day.'
    from ${table} s join (${others}) o on o.key = s.key and o.version < s.version
      and daterange(s.effective_from, s.effective_to, '[]') && daterange(o.effective_from, o.effective_to, '[]')
    where s.readable group by s.row, s.effective_from`;
}
