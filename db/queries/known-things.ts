import { sql } from "drizzle-orm";
import { normalised } from "@/lib/domain/normalised";
import type { KnownThings } from "@/lib/intake/matching/known-things";
import { NumbersOnFile } from "@/lib/intake/matching/numbers-on-file";
import type { Reader } from "../database-types";

/** Beyond this the serials do not fit in the memory that a load may use, and none is offered. */
const mostSerials = 300_000;
const fewModels = 5;

/** What is on file, for offers beside cells of somebody's file. */
export async function loadKnownThings(db: Reader): Promise<KnownThings> {
  const found = await db.rows<{ serial: string }>(
    sql`select serial_normalised as serial from units where identified limit ${mostSerials + 1}`,
  );
  const serials = new NumbersOnFile(found.length > mostSerials ? [] : found.map(({ serial }) => serial));
  const models = await db.rows<{ normalised: string; number: string }>(
    sql`select normalised, number from models where not starts_with(normalised, '~') order by normalised`,
  );
  const replaced = await db.rows<{ part: string; by: string }>(
    sql`select part, by from (
          select normalised as part, superseded_by as by, effective_on from parts where superseded_by is not null
          union all select replaces, part_number, effective_on from parts where replaces is not null) each order by effective_on`,
  );
  const newer = new Map(replaced.map(({ part, by }) => [normalised(part), by]));
  return {
    serials,
    models: new NumbersOnFile(models.map((model) => model.normalised)),
    modelsBeginning: (model) =>
      model.length < 4
        ? []
        : models
            .filter((each) => each.normalised.startsWith(model))
            .slice(0, fewModels)
            .map(({ number }) => number),
    partReplacedBy: (part) => newer.get(part),
  };
}
