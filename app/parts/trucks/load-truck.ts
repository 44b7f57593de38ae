import { AddressReader, type AddressValues } from "@/app/_address/address-reader";
import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import { loadPartCatalogue } from "@/db/queries/part-catalogue";
import { type ListedPart, loadPartList } from "@/db/queries/part-list";
import { loadShop } from "@/db/queries/shop";
import { loadTechnicians } from "@/db/queries/stock-places";
import { loadCarried, loadTruckVisits } from "@/db/queries/truck-visits";
import { addDays, type Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import { normalised } from "@/lib/domain/normalised";
import { partFamilies } from "@/lib/forecast/part-families";
import { typedCents } from "@/lib/format/typed-cents";
import { type KnownTruckPart, truckQuestion } from "@/lib/stock/truck-question";
import { type TruckPart, type TruckStock, truckStock } from "@/lib/stock/truck-stock";
import { type TruckTrial, truckTrial } from "@/lib/stock/truck-trial";

export interface TruckView {
  readonly technicians: readonly string[];
  readonly technician: string | undefined;
  readonly budgetCents: number;
  readonly fillingDays: number;
  readonly currency: Currency;
  readonly notices: readonly string[];
  readonly today: Day;
  readonly truck: LoadedTruck | undefined;
}

export interface LoadedTruck {
  readonly stock: TruckStock;
  /** What it would do in years like the last; undefined without visits. */
  readonly trial: TruckTrial | undefined;
  readonly visits: number;
  /** Visits with a part of unknown cost. */
  readonly leftOut: number;
  readonly atFirstVisit: { readonly done: number; readonly of: number };
  readonly parts: ReadonlyMap<string, ListedPart & { readonly carried: number }>;
}

/** Visits are looked at over a year. */
const overDays = 365;

/** What the address asks about a truck, and the answer. */
export async function loadTruck(db: Reader, values: AddressValues): Promise<TruckView> {
  const reader = new AddressReader(values, ["technician", "budget", "days"]);
  const shop = await loadShop(db);
  const today = todayIn(shop.timeZone);
  const technicians = await loadTechnicians(db, addDays(today, -overDays));
  const asked = reader.text("technician");
  const technician = asked === undefined ? technicians[0] : technicians.find((name) => name === asked);
  if (asked !== undefined && technician === undefined)
    reader.note(`No job of the last year names “${asked}”. Choose a technician.`);
  const budgetCents = readBudget(reader);
  const fillingDays = reader.dayCountOf("days") ?? 7;
  const days = fillingDays < 1 ? 1 : Math.min(fillingDays, 90);
  if (days !== fillingDays) reader.note("A truck is filled every 1 to 90 days.");
  const shared = { technicians, technician, budgetCents, fillingDays: days, currency: shop.currency, today };
  const truck =
    technician === undefined ? undefined : await fill(db, { technician, today, budgetCents, fillingDays: days });
  return { ...shared, notices: reader.notices, truck };
}

function readBudget(reader: AddressReader): number {
  const text = reader.text("budget");
  if (text === undefined) return 50_000;
  const cents = typedCents(text, 6);
  if (cents !== undefined) return cents;
  reader.note(`“${text.slice(0, 40)}” is not an amount; 500.00 was taken. Write it as 500 or 500.00.`);
  return 50_000;
}

interface TruckToFill {
  readonly technician: string;
  readonly today: Day;
  readonly budgetCents: number;
  readonly fillingDays: number;
}

async function fill(db: Reader, { technician, today, budgetCents, fillingDays }: TruckToFill): Promise<LoadedTruck> {
  const visits = await loadTruckVisits(db, technician, addDays(today, -overDays), today);
  const catalogue = await loadPartCatalogue(db, today, []);
  const { currentOf } = partFamilies(catalogue.links, catalogue.nameOf);
  const past = visits.map(({ parts }) => {
    const needed = new Map<string, number>();
    for (const { partNumber, quantity } of parts) {
      const key = currentOf(normalised(partNumber));
      needed.set(key, (needed.get(key) ?? 0) + quantity);
    }
    return { parts: needed };
  });
  const carried = await loadCarried(db, technician);
  const keys = [...new Set(past.flatMap(({ parts }) => [...parts.keys()]))];
  const listed = await loadPartList(db, keys);
  const known = new Map<string, KnownTruckPart>();
  for (const part of listed) {
    if (part.unitCostCents === undefined || part.unitCostCents < 1) continue;
    known.set(part.partKey, {
      unitCents: part.unitCostCents,
      carried: carried.get(part.partKey) ?? 0,
      trend: trendOf(part),
    });
  }
  const { leftOut, ...question } = truckQuestion({ visits: past, overDays, fillingDays, known, budgetCents });
  const stock = truckStock(question);
  const judged = visits.filter(({ atFirstVisit }) => atFirstVisit !== undefined);
  return {
    stock,
    trial: truckTrial({
      visits: past
        .filter(({ parts }) => [...parts.keys()].every((part) => known.has(part)))
        .map(({ parts }) => ({ parts, trend: meanTrend(parts, known) })),
      overDays,
      fillingDays,
      ...loads(question.parts, stock),
      futures: triedYears,
      seed: 1,
    }),
    visits: visits.length,
    leftOut,
    atFirstVisit: { done: judged.filter(({ atFirstVisit }) => atFirstVisit).length, of: judged.length },
    parts: new Map(listed.map((part) => [part.partKey, { ...part, carried: carried.get(part.partKey) ?? 0 }])),
  };
}

const triedYears = 200;

/** Pieces of each part after a filling, without and with what is to be added. */
function loads(parts: readonly TruckPart[], { steps }: TruckStock) {
  const before = new Map(parts.map(({ part, carried }) => [part, carried]));
  const after = new Map(before);
  for (const part of steps.flatMap(({ added }) => added)) after.set(part, (after.get(part) ?? 0) + 1);
  return { before, after };
}

function meanTrend(parts: ReadonlyMap<string, number>, known: ReadonlyMap<string, KnownTruckPart>): number {
  const trends = [...parts.keys()].map((part) => known.get(part)?.trend ?? 1);
  return trends.reduce((sum, trend) => sum + trend, 0) / Math.max(1, trends.length);
}

/** Expected use over that of the last year, within a factor of four: a part that was hardly used has no steadier one. */
function trendOf({ plan, usedLastYear }: ListedPart): number {
  if (plan.order.kind !== "quantity" || usedLastYear === 0) return 1;
  return Math.min(4, Math.max(0.25, plan.order.yearlyDemand / usedLastYear));
}
