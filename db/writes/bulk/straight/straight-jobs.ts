import { copyLine } from "@/db/copy-line";
import type { Transaction } from "@/db/database-types";
import { factColumns } from "../../kinds/agreed-facts";
import { unitFacts } from "../../kinds/unit-facts";
import { run } from "../../staging/run";
import type { StagedKind } from "../../staging/staged-kind";
import { any } from "../first-load";
import { noteMade } from "../made-rows";
import type { PlainFile } from "../stage-plain";
import {
  noteComponents,
  storedModels,
  storeModels,
  storeUnits,
  unitsOf,
  wordsContradict,
  wordsOf,
} from "../told-by-rows";
import { JobGatherer } from "./gather-jobs";
import { NotStraight } from "./not-straight";
import type { StraightKind } from "./straight-kind";

const table = "straight";

/** Jobs while none is on file. */
export function straightJobs(tx: Transaction, kind: StagedKind, file: PlainFile): StraightKind | undefined {
  if (unitFacts.some(({ from }) => file.columns.includes(from))) return undefined;
  const gathered = new JobGatherer(kind.columns);
  return {
    table,
    keys: ["unit_id", "job_id"],
    gatherer: async () => gathered,
    async agree() {
      await copyWords(tx, gathered);
      if (await wordsContradict(tx, table)) throw new NotStraight("words that contradict others");
      await copyUnits(tx, gathered);
      if (!(await any(tx, "select from units"))) return;
      await run(
        tx,
        `update ${unitsOf(table)} s set known = true, models_differ = (m.normalised <> s.model_n) is true
         from units u left join models m using (model_id) where u.unit_id = s.unit_id`,
      );
      if (await any(tx, `select from ${unitsOf(table)} where models_differ`))
        throw new NotStraight("units of two models");
    },
    async store(batchId, fills) {
      await storeModels(tx, table, wordsOf(table));
      await storeUnits(tx, { table, present: new Set(file.columns), fills }, batchId);
      const from = "select unit_id, job_id, (row_number() over ())::integer as row from jobs";
      await noteMade(tx, { table: "jobs", key: ["unit_id", "job_id"], from, batchId });
      await noteComponents(tx, table, batchId);
    },
    models: storedModels(table),
  };
}

async function copyWords(tx: Transaction, { words }: JobGatherer): Promise<void> {
  await run(
    tx,
    `create temporary table ${wordsOf(table)} (row integer, maker text, maker_n text, model text, model_n text, product_type text, component text, symptom text) on commit drop`,
  );
  await copyLines(
    tx,
    wordsOf(table),
    words,
    ({ row, maker, makerN, model, modelN, productType = null, component = null, symptom = null }) =>
      copyLine([row, maker, makerN, model, modelN, productType, component, symptom]),
  );
  await run(tx, `analyze ${wordsOf(table)}`);
}

async function copyUnits(tx: Transaction, gathered: JobGatherer): Promise<void> {
  const { units, unitRows, unitModels, serials, serialsN, models, makers } = gathered;
  const facts = factColumns.map((name) => `${name} date, `).join("");
  await run(
    tx,
    `create temporary table ${unitsOf(table)} (unit_id bigint, row integer, maker_n text, model_n text, serial text, serial_normalised text,
       ${facts} known boolean default false, models_differ boolean default false) on commit drop`,
  );
  await copyLines(
    tx,
    `${unitsOf(table)} (unit_id, row, maker_n, model_n, serial, serial_normalised)`,
    unitRows,
    (row, unit) => {
      const model = (unitModels[unit] ?? 0) - 1;
      const id = (BigInt(units.highs[unit] ?? 0) << 32n) | BigInt(units.lows[unit] ?? 0);
      const maker = makers.texts[(models.within[model] ?? 0) - 1] ?? "";
      return copyLine([id, row, maker, models.texts[model] ?? "", serials[unit] ?? null, serialsN[unit] ?? null]);
    },
  );
  await run(tx, `analyze ${unitsOf(table)}`);
}

const linesAtOnce = 2_000;

async function copyLines<Item>(
  tx: Transaction,
  target: string,
  items: readonly Item[],
  line: (item: Item, index: number) => string,
): Promise<void> {
  async function* chunks(): AsyncGenerator<Uint8Array> {
    for (let from = 0; from < items.length; from += linesAtOnce)
      yield Buffer.from(
        items
          .slice(from, from + linesAtOnce)
          .map((item, index) => line(item, from + index))
          .join(""),
      );
  }
  await tx.copy(`copy ${target} from stdin`, chunks());
}
