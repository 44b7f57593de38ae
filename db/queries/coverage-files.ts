import { type AnyColumn, aliasedTable, and, eq, inArray, sql } from "drizzle-orm";
import type { CoverageFile, DatedUnit } from "@/lib/coverage/job-coverage-facts";
import { emptyFile } from "@/lib/coverage/job-coverage-facts";
import type { Contract } from "@/lib/domain/contract";
import { normalised } from "@/lib/domain/normalised";
import type { Reader } from "../database-types";
import { contracts } from "../schema/coverage";
import { repairSpans, unitFacts, units } from "../schema/register";
import { inScope, type UnitScope } from "./money-units";
import { loadPlainRows } from "./plain-rows";

type UnitRow = typeof units.$inferSelect;

const contractColumnsOfPapers = ["holder", "currency", "batchId"] as const;
type ContractRow = Omit<typeof contracts.$inferSelect, (typeof contractColumnsOfPapers)[number]>;

/** What is on file for cover beside each unit and its jobs, at the cost of a handful of reads however many units there are. */
export async function loadCoverageFiles(
  db: Reader,
  unitIds: readonly string[],
): Promise<(unitId: string) => CoverageFile> {
  const ids = [...new Set(unitIds)];
  if (ids.length === 0) return () => emptyFile;
  const scope: UnitScope = { kind: "units", unitIds: ids };
  const among = (column: AnyColumn) => inScope(sql`${column}`, scope);
  const facts = await db.select().from(unitFacts).where(among(unitFacts.unitId));
  const bought = await loadPlainRows(
    db,
    contracts,
    sql`where ${inScope(sql`t.unit_id`, scope)} order by t.contract_number`,
    { without: contractColumnsOfPapers },
  );
  const taken = await loadTaken(db, bought);
  const spans = await db.select().from(repairSpans).where(among(repairSpans.unitId)).orderBy(repairSpans.fromOn);
  const replaced = await loadExchangedUnits(db, facts);
  const factsOfUnit = byUnit(facts);
  const boughtForUnit = byUnit(bought);
  const spansOfUnit = byUnit(spans);
  return (unitId) => {
    const [own] = factsOfUnit(unitId);
    const contractRows = boughtForUnit(unitId);
    const spanRows = spansOfUnit(unitId);
    if (own === undefined && contractRows.length === 0 && spanRows.length === 0) return emptyFile;
    return {
      ...emptyFile,
      contracts: contractRows.map((row) => contractOf(row, taken.get(unitId) ?? [])),
      outForRepair: spanRows.map(({ fromOn, untilOn }) => ({ from: fromOn, until: untilOn })),
      ...(own === undefined ? {} : factsOf(own, replaced.get(unitId))),
    };
  };
}

function byUnit<Row extends { readonly unitId: string }>(rows: readonly Row[]): (unitId: string) => readonly Row[] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const group = groups.get(row.unitId);
    if (group === undefined) groups.set(row.unitId, [row]);
    else group.push(row);
  }
  return (unitId) => groups.get(unitId) ?? [];
}

function factsOf(row: typeof unitFacts.$inferSelect, exchangedUnit: DatedUnit | undefined): Partial<CoverageFile> {
  return {
    acquiredOn: row.acquiredOn ?? undefined,
    transferRegisteredOn: row.transferRegisteredOn ?? undefined,
    exchangedOn: row.exchangedOn ?? undefined,
    exchangedUnit,
    firstUsedOn: row.firstUsedOn ?? undefined,
    serialRemoved: row.serialRemoved,
  };
}

/** A contract without a known day of sale counts as sold on its first day. */
function contractOf(row: ContractRow, taken: NonNullable<Contract["taken"]>): Contract {
  return {
    number: row.contractNumber,
    policy: row.plan ?? "",
    soldOn: row.soldOn ?? row.startsOn,
    cancelledOn: row.cancelledOn ?? undefined,
    stated: { startsOn: row.startsOn, endsOn: row.endsOn },
    waitDays: row.waitDays,
    deductibleCents: row.deductibleCents ?? undefined,
    limitCents: row.limitCents ?? undefined,
    taken,
  };
}

interface TakenRow extends Record<string, unknown> {
  readonly unitId: string;
  readonly jobNumber: string;
  readonly cents: string;
}

/** By unit, what its contract's claims were paid or still ask. A refused claim takes nothing while it is refused. */
async function loadTaken(
  db: Reader,
  bought: readonly ContractRow[],
): Promise<ReadonlyMap<string, NonNullable<Contract["taken"]>>> {
  const limited = new Set(bought.flatMap(({ unitId, limitCents }) => (limitCents === null ? [] : [unitId])));
  const rows =
    limited.size === 0
      ? []
      : await db.rows<TakenRow>(sql`
          select c.unit_id::text as "unitId", j.job_number as "jobNumber",
            sum(case when c.state in ('sent', 'received', 'approved', 'appealed') then coalesce(c.approved_cents, c.claimed_cents)
              else c.paid_cents - c.clawed_back_cents end)::text as cents
          from claims c join jobs j using (unit_id, job_id) join policies p using (policy_id)
          where ${inScope(sql`c.unit_id`, { kind: "units", unitIds: [...limited] })} and c.state not in ('draft', 'withdrawn')
            and p.document -> 'payer' ->> 'kind' = 'contract'
          group by 1, 2 order by 1, 2`);
  const groups = new Map<string, { readonly jobNumber: string; readonly cents: number }[]>();
  for (const { unitId, jobNumber, cents } of rows)
    groups.set(unitId, [...(groups.get(unitId) ?? []), { jobNumber, cents: Number(cents) }]);
  return groups;
}

/** The units, of the same maker, that were handed back; by the unit that came instead. */
async function loadExchangedUnits(
  db: Reader,
  facts: readonly (typeof unitFacts.$inferSelect)[],
): Promise<ReadonlyMap<string, DatedUnit>> {
  const wanted = new Map(
    facts.flatMap((row) => (row.exchangedSerial ? [[row.unitId, normalised(row.exchangedSerial)]] : [])),
  );
  if (wanted.size === 0) return new Map();
  const present = aliasedTable(units, "present");
  const rows = await db
    .select({ unitId: present.unitId, before: units })
    .from(present)
    .innerJoin(units, eq(units.makerId, present.makerId))
    .where(and(inArray(present.unitId, [...wanted.keys()]), inArray(units.serialNormalised, [...wanted.values()])));
  return new Map(
    rows
      .filter(({ unitId, before }) => before.serialNormalised === wanted.get(unitId))
      .map(({ unitId, before }) => [unitId, datedUnit(before)]),
  );
}

function datedUnit(row: UnitRow): DatedUnit {
  return {
    madeFrom: row.madeFrom ?? undefined,
    madeUntil: row.madeUntil ?? undefined,
    shippedOn: row.shippedOn ?? undefined,
    soldOn: row.soldOn ?? undefined,
    deliveredOn: row.deliveredOn ?? undefined,
    installedOn: row.installedOn ?? undefined,
    occupiedOn: row.occupiedOn ?? undefined,
    registeredOn: row.registeredOn ?? undefined,
  };
}
