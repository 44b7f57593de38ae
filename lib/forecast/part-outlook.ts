import { countBand } from "@/lib/statistics/demand/count-band";
import type { MonthlyCounts } from "@/lib/statistics/demand/learn-levels";
import type { BackTest } from "./back-test";
import { type ComponentFleet, partFleet } from "./fleet/part-fleet";
import type { PiecesTaken } from "./fleet/pieces-taken";
import { type DemandKnowledge, forecastDemand } from "./forecast-demand";
import { type DemandPaths, demandPaths } from "./paths";
import { seedOf } from "./seed-of";
import { keptFutures, type StoredOutlook, type StoredTest } from "./stored-outlook";

export interface PartOutlook {
  readonly outlook: StoredOutlook;
  /** As many as are kept; of a part without months all zero. */
  readonly paths: DemandPaths;
}

interface OutlookQuestion {
  readonly partKey: string;
  readonly history: MonthlyCounts;
  readonly knowledge: DemandKnowledge;
  /** The machines that carry the part; undefined where its component is not known. */
  readonly fleet: ComponentFleet | undefined;
  readonly pieces: PiecesTaken;
  readonly notes: readonly string[];
}

/** A part's forecast with its futures. The same part from the same months is the same outlook, whenever it is made. */
export function partOutlook({ partKey, history, knowledge, fleet, pieces, notes }: OutlookQuestion): PartOutlook {
  const { futures, horizon } = keptFutures;
  const seed = seedOf(partKey);
  const machines = partFleet(fleet, { history, pieces, seed });
  const forecast = forecastDemand(history, { horizon, knowledge, fleet: machines.method });
  if (forecast.kind === "no-months") {
    const nothing = Array.from({ length: horizon }, () => 0);
    return { outlook: { kind: "no-months", notes }, paths: Array.from({ length: futures }, () => nothing) };
  }
  const { method, reason, basis, test, months, future } = forecast;
  return {
    outlook: {
      kind: "forecast",
      method,
      reason,
      basis,
      fleet: machines.told,
      notes,
      test: storedTest(test),
      months: months.map(({ mean, distribution, band60, band90 }) => ({
        mean: Math.round(mean * 1000) / 1000,
        band30: countBand(distribution, 0.3),
        band60,
        band90,
      })),
    },
    paths: demandPaths(future, { horizon, futures, seed }),
  };
}

function storedTest(test: BackTest): StoredTest {
  if (test.kind === "too-short") return test;
  const methods = test.methods.map(({ key, name, loss, inside60, inside90 }) => ({
    key,
    name,
    loss,
    inside60,
    inside90,
  }));
  return { kind: "tested", origins: test.origins, months: test.months, methods };
}
