import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { partTaking } from "@/lib/forecast/fleet/part-taking";
import { PiecesTaken } from "@/lib/forecast/fleet/pieces-taken";
import { goneDays, monthsBetween } from "@/lib/forecast/forecast-month";
import { packedFutures, unpackedFutures } from "@/lib/forecast/packed-futures";
import { partOutlook } from "@/lib/forecast/part-outlook";
import type { DemandPaths } from "@/lib/forecast/paths";
import { keptFutures, type StoredOutlook } from "@/lib/forecast/stored-outlook";
import { assumedTerms } from "@/lib/stock/buying-terms";
import { partPlan } from "@/lib/stock/part-plan";
import type { Transaction } from "../../database-types";
import { loadOrderDays, loadPartTerms } from "../../queries/buying-terms";
import { loadNumberTaking } from "../../queries/number-taking";
import { type CatalogueEntry, loadPartCatalogue } from "../../queries/part-catalogue";
import { loadNumberUse, type NumberUse } from "../../queries/part-histories";
import { partOutlooks, partPlans } from "../../schema/outlooks";
import { Fleets } from "./fleets";
import { dataVersion, type KeptKnowledge, type OutlookSetting } from "./outlook-setting";

/**
 * Works out these parts anew, where anything that bears on them has changed since they were; plans are made anew for
 * today in any case. Nothing is adjusted.
 * @param keys current numbers
 * @returns how many outlooks were another than before
 */
export async function workOutParts(
  tx: Transaction,
  keys: readonly string[],
  { setting, kept, today }: { readonly setting: OutlookSetting; readonly kept: KeptKnowledge; readonly today: Day },
): Promise<number> {
  if (keys.length === 0) return 0;
  const spellings = keys.flatMap((key) => setting.spellings.get(key) ?? []);
  const use = new Map((await loadNumberUse(tx, setting.span, spellings)).map((each) => [each.partNumber, each]));
  const { entries } = await loadPartCatalogue(tx, today, keys);
  const before = new Map((await loadVersions(tx, keys)).map((row) => [row.key, row]));
  const terms = await loadPartTerms(tx, keys);
  const orderDays = await loadOrderDays(tx, today, keys);
  const taking = await loadNumberTaking(tx, spellings, setting.span.until);
  const fleets = new Fleets(tx, setting.span, kept.seasons);
  let changed = 0;
  for (const key of keys) {
    const facts = partFacts(key, { setting, use, entry: entries.get(key), termsCost: terms.get(key)?.unitCostCents });
    const { maker, pieces } = partTaking(taking.filter(({ partNumber }) => facts.spellings.includes(partNumber)));
    const machines = facts.component === undefined ? undefined : await fleets.of(facts.component, maker);
    const version = dataVersion([key, facts, kept.hash, pieces, machines?.hash]);
    const known = before.get(key);
    let paths: DemandPaths;
    if (known?.version === version) {
      paths = unpackedFutures(known.futures, keptFutures.horizon);
    } else {
      const made = partOutlook({
        partKey: key,
        history: facts.history,
        knowledge: kept.knowledge,
        fleet: machines?.fleet,
        pieces: new PiecesTaken(pieces),
        notes: facts.notes,
      });
      paths = made.paths;
      await saveOutlook(tx, { key, facts, outlook: made.outlook, paths, version });
      changed += 1;
    }
    const plan = partPlan({
      paths: facts.history.length === 0 ? undefined : paths,
      goneDays: goneDays(kept.forecastFrom, today),
      terms: terms.get(key) ?? assumedTerms,
      orderDays: orderDays.get(key) ?? [],
      unitCents: facts.unitCostCents ?? 0,
    });
    await tx
      .insert(partPlans)
      .values({ partKey: key, plannedOn: today, plan })
      .onConflictDoUpdate({ target: partPlans.partKey, set: { plannedOn: today, plan } });
  }
  return changed;
}

interface PartFacts {
  readonly partNumber: string;
  readonly description: string;
  readonly component: string | undefined;
  readonly spellings: readonly string[];
  readonly historyFrom: Day;
  readonly forecastFrom: Day;
  readonly history: readonly number[];
  readonly usedLastYear: number;
  readonly jobsLastYear: number;
  readonly lastUsedOn: Day | undefined;
  readonly unitCostCents: number | undefined;
  readonly notes: readonly string[];
  readonly currency: OutlookSetting["currency"];
}

interface KnownOfPart {
  readonly setting: OutlookSetting;
  readonly use: ReadonlyMap<string, NumberUse>;
  readonly entry: CatalogueEntry | undefined;
  readonly termsCost: number | undefined;
}

function partFacts(key: string, { setting, use, entry, termsCost }: KnownOfPart): PartFacts {
  const { span, currency } = setting;
  const spellings = (setting.spellings.get(key) ?? []).toSorted();
  const uses = spellings
    .flatMap((number) => use.get(number) ?? [])
    .toSorted((a, b) => b.lastUsedOn.localeCompare(a.lastUsedOn));
  const [latest] = uses;
  const history = Array.from({ length: monthsBetween(span.from, span.until) }, (_, month) =>
    uses.reduce((sum, { months }) => sum + (months.get(month) ?? 0), 0),
  );
  const lastCost = latest?.lastCost.currency === currency ? latest.lastCost.cents : undefined;
  const listed = entry?.currency === currency ? entry.costCents : undefined;
  const [named, ...others] = new Set(uses.flatMap((each) => each.component ?? []));
  const component = entry?.component ?? (others.length === 0 ? named : undefined);
  return {
    partNumber: entry?.partNumber ?? setting.nameOf(key),
    description: entry?.description || (latest?.description ?? ""),
    component,
    spellings,
    historyFrom: span.from,
    forecastFrom: span.until,
    history,
    usedLastYear: history.slice(-12).reduce((sum, count) => sum + count, 0),
    jobsLastYear: uses.reduce((sum, each) => sum + each.jobsLastYear, 0),
    lastUsedOn: latest?.lastUsedOn,
    unitCostCents: termsCost ?? listed ?? lastCost,
    notes: setting.families.problems.filter(({ parts }) => parts.includes(key)).map(({ sentence }) => sentence),
    currency,
  };
}

async function loadVersions(tx: Transaction, keys: readonly string[]) {
  return await tx.rows<{ key: string; version: string; futures: Buffer }>(sql`
    select part_key as key, data_version as version, futures from part_outlooks where part_key = any(${sql.param([...keys])}::text[])`);
}

interface OutlookToSave {
  readonly key: string;
  readonly facts: PartFacts;
  readonly outlook: StoredOutlook;
  readonly paths: DemandPaths;
  readonly version: string;
}

async function saveOutlook(tx: Transaction, { key, facts, outlook, paths, version }: OutlookToSave): Promise<void> {
  const { notes: _, ...columns } = facts;
  const row = {
    ...columns,
    component: facts.component ?? null,
    lastUsedOn: facts.lastUsedOn ?? null,
    unitCostCents: facts.unitCostCents ?? null,
    outlook,
    futures: Buffer.from(packedFutures(paths)),
    dataVersion: version,
    workedOutAt: sql`now()`,
  };
  await tx
    .insert(partOutlooks)
    .values({ partKey: key, ...row })
    .onConflictDoUpdate({ target: partOutlooks.partKey, set: row });
}
