import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { MovementKind, OrderState } from "@/lib/domain/stock";
import type { StoredOutlook } from "@/lib/forecast/stored-outlook";
import type { Reader } from "../database-types";
import { loadPartTerms, type PartTerms } from "./buying-terms";
import { type ListedPart, loadPartList } from "./part-list";

/** Everything that the page of one part shows. */
export interface PartPage extends ListedPart {
  readonly spellings: readonly string[];
  readonly historyFrom: Day;
  readonly forecastFrom: Day;
  readonly history: readonly number[];
  readonly outlook: StoredOutlook;
  readonly dataVersion: string;
  readonly workedOutAt: string;
  readonly terms: PartTerms | undefined;
  readonly places: readonly StockPlace[];
  readonly movements: readonly LedgerEntry[];
  readonly movementsInAll: number;
  readonly orders: readonly PartOrder[];
}

export interface StockPlace {
  readonly partNumber: string;
  /** Another number than the current one: it still lies there, and is not counted for ordering. */
  readonly isOlder: boolean;
  readonly place: string;
  readonly onHand: number;
  readonly reserved: number;
  readonly lastCountedOn: Day | undefined;
}

export interface LedgerEntry {
  readonly movementId: number;
  readonly place: string;
  readonly kind: MovementKind;
  readonly quantity: number;
  readonly reserved: number;
  readonly happenedOn: Day;
  readonly by: string;
  readonly note: string;
  readonly jobNumber: string | undefined;
  readonly orderId: number | undefined;
  /** At that place, after this entry. */
  readonly after: number;
}

export interface PartOrder {
  readonly orderId: number;
  readonly state: OrderState;
  readonly quantity: number;
  readonly received: number;
  readonly orderedOn: Day | undefined;
  readonly expectedOn: Day | undefined;
  readonly supplier: string;
}

/** Entries of the ledger that a page shows. */
const shownMovements = 40;

/** @param olderKeys numbers that this one took the place of */
export async function loadPartPage(
  db: Reader,
  partKey: string,
  olderKeys: readonly string[],
): Promise<PartPage | undefined> {
  const [listed] = await loadPartList(db, [partKey]);
  if (listed === undefined) return undefined;
  const [kept] = await db.rows<OutlookRow>(sql`
    select spellings, history_from::text as "historyFrom", forecast_from::text as "forecastFrom", history, outlook,
      data_version as "dataVersion", worked_out_at::text as "workedOutAt"
    from part_outlooks where part_key = ${partKey}`);
  if (kept === undefined) return undefined;
  return {
    ...listed,
    ...kept,
    terms: (await loadPartTerms(db, [partKey])).get(partKey),
    places: await loadPlaces(db, partKey, olderKeys),
    ...(await loadLedger(db, partKey)),
    orders: await loadOrdersOf(db, partKey),
  };
}

type OutlookRow = {
  spellings: string[];
  historyFrom: Day;
  forecastFrom: Day;
  history: number[];
  outlook: StoredOutlook;
  dataVersion: string;
  workedOutAt: string;
};

async function loadPlaces(db: Reader, partKey: string, olderKeys: readonly string[]): Promise<readonly StockPlace[]> {
  const rows = await db.rows<
    Record<string, unknown> & Omit<StockPlace, "lastCountedOn"> & { lastCountedOn: Day | null }
  >(sql`
    select (select max(m.part_number) from stock_movements m where m.part_key = l.part_key) as "partNumber",
      l.part_key <> ${partKey} as "isOlder", place, on_hand as "onHand", reserved, last_counted_on::text as "lastCountedOn"
    from stock_levels l where part_key = any(${sql.param([partKey, ...olderKeys])}::text[]) and (part_key = ${partKey} or on_hand <> 0)
    order by 2, place`);
  return rows.map((row) => ({ ...row, lastCountedOn: row.lastCountedOn ?? undefined }));
}

async function loadLedger(db: Reader, partKey: string) {
  const rows = await db.rows<
    Record<string, unknown> &
      Omit<LedgerEntry, "jobNumber" | "orderId"> & { jobNumber: string | null; orderId: number | null; all: number }
  >(sql`
    select movement_id::float8 as "movementId", place, kind, quantity, reserved, happened_on::text as "happenedOn", by, note,
      job_number as "jobNumber", order_id as "orderId", sum(quantity) over (partition by place order by movement_id)::int as after,
      count(*) over ()::int as all
    from stock_movements where part_key = ${partKey} order by movement_id desc limit ${shownMovements}`);
  return {
    movements: rows.map(({ all: _, ...row }) => ({
      ...row,
      jobNumber: row.jobNumber ?? undefined,
      orderId: row.orderId ?? undefined,
    })),
    movementsInAll: rows[0]?.all ?? 0,
  };
}

async function loadOrdersOf(db: Reader, partKey: string): Promise<readonly PartOrder[]> {
  const rows = await db.rows<
    Record<string, unknown> &
      Omit<PartOrder, "orderedOn" | "expectedOn"> & { orderedOn: Day | null; expectedOn: Day | null }
  >(sql`
    select order_id as "orderId", state, quantity, received, ordered_on::text as "orderedOn", expected_on::text as "expectedOn", supplier
    from part_orders where part_key = ${partKey} and state in ('draft', 'ordered') order by order_id`);
  return rows.map((row) => ({
    ...row,
    orderedOn: row.orderedOn ?? undefined,
    expectedOn: row.expectedOn ?? undefined,
  }));
}
