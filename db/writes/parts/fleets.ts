import { createHash } from "node:crypto";
import { type Day, toPlainDate } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import type { ExposureCells } from "@/lib/failures/cells";
import type { WearByMonth } from "@/lib/forecast/fleet/fleet-failures";
import { type FleetRecord, fleetRecord } from "@/lib/forecast/fleet/fleet-record";
import { ComponentFleet, type NamedSignal } from "@/lib/forecast/fleet/part-fleet";
import { testSettings } from "@/lib/forecast/forecast-demand";
import { monthAfter, monthsBetween } from "@/lib/forecast/forecast-month";
import { seedOf } from "@/lib/forecast/seed-of";
import type { TypeSeason } from "@/lib/forecast/stored-knowledge";
import { keptFutures } from "@/lib/forecast/stored-outlook";
import type { Reader } from "../../database-types";
import { loadExposureCells } from "../../queries/exposure-cells";
import { loadOpenSignals, type OpenSignal } from "../../queries/open-signals";
import type { HistorySpan } from "../../queries/part-histories";

export interface HashedFleet {
  readonly fleet: ComponentFleet;
  /** Of all that it was made from. */
  readonly hash: string;
}

/** The machines that carry components, each read once: parts of one component are drawn from the same failures. */
export class Fleets {
  readonly #db: Reader;
  readonly #span: HistorySpan;
  readonly #seasons: readonly TypeSeason[];
  readonly #cells = new Map<string, ExposureCells>();
  readonly #fleets = new Map<string, HashedFleet>();
  #signals: readonly OpenSignal[] | undefined;

  constructor(db: Reader, span: HistorySpan, seasons: readonly TypeSeason[]) {
    this.#db = db;
    this.#span = span;
    this.#seasons = seasons;
  }

  /** @param maker undefined for machines of all makers */
  async of(component: string, maker: string | undefined): Promise<HashedFleet> {
    const key = `${component} ${maker ?? ""}`;
    const known = this.#fleets.get(key) ?? (await this.#made(component, maker));
    this.#fleets.set(key, known);
    return known;
  }

  async #made(component: string, maker: string | undefined): Promise<HashedFleet> {
    const cells = await this.#cellsOf(component);
    const record = fleetRecord(cells, {
      component,
      maker,
      monthStarts: monthStarts(this.#span),
      testMonths: testSettings.origins,
    });
    const wear = wearOf(this.#seasons, cells, { component, maker });
    const signals = await this.#signalsOf(component, maker);
    const fleet = new ComponentFleet({
      record,
      maker,
      wear,
      signals,
      firstMonth: toPlainDate(this.#span.until).month - 1,
      ...keptFutures,
      seed: seedOf(`${component} ${maker ?? ""}`),
    });
    return { fleet, hash: hashOf(record, [wear, signals]) };
  }

  async #cellsOf(component: string): Promise<ExposureCells> {
    const known = this.#cells.get(component) ?? (await loadExposureCells(this.#db, { onlyComponents: [component] }));
    this.#cells.set(component, known);
    return known;
  }

  async #signalsOf(component: string, maker: string | undefined): Promise<readonly NamedSignal[]> {
    this.#signals ??= await loadOpenSignals(this.#db);
    return this.#signals
      .filter((signal) => signal.word === component && (maker === undefined || signal.maker === maker))
      .filter(({ lead }) => lead.expected > 0)
      .map(({ key, lead: { observed, expected, expectedAhead } }) => ({ key, observed, expected, expectedAhead }));
  }
}

function monthStarts({ from, until }: HistorySpan): readonly number[] {
  return Array.from({ length: monthsBetween(from, until) + 1 }, (_, month) =>
    dayNumber(monthAfter(from as Day, month)),
  );
}

/** Seasons of the kinds of machine in which the component failed, in proportion. */
function wearOf(
  seasons: readonly TypeSeason[],
  { jobs, models }: ExposureCells,
  { component, maker }: { readonly component: string; readonly maker: string | undefined },
): { readonly now: WearByMonth; readonly beforeTest: WearByMonth } {
  const typeOf = new Map(
    models
      .filter((model) => maker === undefined || model.maker === maker)
      .map((model) => [model.modelId, model.productType]),
  );
  const failures = new Map<string, number>();
  for (const job of jobs) {
    const type = typeOf.get(job.modelId);
    if (type === undefined || job.component !== component || job.countedAs !== "failure") continue;
    failures.set(type, (failures.get(type) ?? 0) + job.jobs);
  }
  const all = [...failures.values()].reduce((sum, count) => sum + count, 0);
  const mixed = (as: "now" | "beforeTest"): WearByMonth => {
    const has = seasons.filter((season) => season[as] !== undefined && failures.has(season.productType));
    if (has.length === 0) return undefined;
    return Array.from({ length: 12 }, (_, month) =>
      has.reduce(
        (sum, season) => sum + (((season[as]?.[month] ?? 1) - 1) * (failures.get(season.productType) ?? 0)) / all,
        1,
      ),
    );
  };
  return { now: mixed("now"), beforeTest: mixed("beforeTest") };
}

function hashOf({ failures, running, now, beforeTest }: FleetRecord, others: unknown): string {
  const hash = createHash("sha256").update(JSON.stringify([failures, now.left, beforeTest.left, others]));
  const arrays = [now, beforeTest].flatMap(({ lives, came }) => [lives.failed, lives.lived, came]);
  for (const array of [...running, ...arrays])
    hash.update(new Uint8Array(array.buffer, array.byteOffset, array.byteLength));
  return hash.digest("hex");
}
