import { and, asc, desc, eq, inArray } from "drizzle-orm";
import type { Reader } from "../database-types";
import { contracts } from "../schema/coverage";
import { handEdits } from "../schema/hand";
import { repairSpans, unitFacts } from "../schema/register";

/** What somebody entered about a unit for its cover, with every change of it. */
export async function loadUnitFacts(db: Reader, unitId: string) {
  const [facts] = await db.select().from(unitFacts).where(eq(unitFacts.unitId, unitId));
  const spans = await db
    .select()
    .from(repairSpans)
    .where(eq(repairSpans.unitId, unitId))
    .orderBy(asc(repairSpans.fromOn));
  const papers = await db.select().from(contracts).where(eq(contracts.unitId, unitId)).orderBy(asc(contracts.startsOn));
  const edits = await db
    .select()
    .from(handEdits)
    .where(and(inArray(handEdits.tableName, ["unit_facts", "units"]), eq(handEdits.key, unitId)))
    .orderBy(desc(handEdits.editId));
  return { facts, spans, papers, edits };
}

export type UnitFactsOnFile = Awaited<ReturnType<typeof loadUnitFacts>>;
