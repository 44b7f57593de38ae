import { countBand } from "@/lib/statistics/demand/count-band";
import type { MonthlyCounts } from "@/lib/statistics/demand/learn-levels";
import type { BackTest } from "./back-test";
import { type DemandKnowledge, forecastDemand } from "./forecast-demand";
import { type DemandPaths, demandPaths } from "./paths";
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
  readonly notes: readonly string[];
}

/** A part's forecast with its futures. The same part from the same months is the same outlook, whenever it is made. */
export function partOutlook({ partKey, history, knowledge, notes }: OutlookQuestion): PartOutlook {
  const { futures, horizon } = keptFutures;
  const forecast = forecastDemand(history, { horizon, knowledge });
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
      notes,
      test: storedTest(test),
      months: months.map(({ mean, distribution, band60, band90 }) => ({
        mean: Math.round(mean * 1000) / 1000,
        band30: countBand(distribution, 0.3),
        band60,
        band90,
      })),
    },
    paths: demandPaths(future, { horizon, futures, seed: seedOf(partKey) }),
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

/** Parts draw apart from each other, and each always the same. FNV-1a, Fowler, Noll & Vo (1991). */
function seedOf(partKey: string): number {
  let hash = 0x811c9dc5;
  for (const letter of partKey) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  return hash;
}
