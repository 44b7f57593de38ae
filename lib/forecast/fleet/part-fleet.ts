import type { MonthlyCounts } from "@/lib/statistics/demand/learn-levels";
import type { DemandMethod } from "../demand-method";
import { fleetDemand } from "./fleet-demand";
import { FleetFailures, type FleetSignal, type WearByMonth } from "./fleet-failures";
import type { FleetRecord, KnownFleet } from "./fleet-record";
import { partUse } from "./part-use";
import type { PiecesTaken } from "./pieces-taken";
import type { StoredFleet } from "./stored-fleet";

/** Failures known when the back-test begins, from which on a life is told. Own choice, no source. */
export const fewestFailuresForFleet = 5;

export interface NamedSignal extends FleetSignal {
  readonly key: string;
}

/** The machines that carry a component, of one maker or of all, with all that bears on how many of it will fail. */
export class ComponentFleet {
  readonly record: FleetRecord;
  readonly maker: string | undefined;
  readonly signals: readonly NamedSignal[];
  readonly #situation: Omit<ConstructorParameters<typeof FleetFailures>[0], "record" | "signals">;
  #failures: FleetFailures | undefined;

  constructor({ record, maker, signals, ...situation }: FleetOfComponent) {
    this.record = record;
    this.maker = maker;
    this.signals = signals;
    this.#situation = situation;
  }

  /** Worked out once, and only where it is asked for. */
  failures(): FleetFailures {
    this.#failures ??= new FleetFailures({ ...this.#situation, record: this.record, signals: this.signals });
    return this.#failures;
  }

  get seasonal(): boolean {
    return this.#situation.wear.now !== undefined;
  }
}

export interface FleetOfComponent {
  readonly record: FleetRecord;
  readonly maker: string | undefined;
  readonly wear: { readonly now: WearByMonth; readonly beforeTest: WearByMonth };
  readonly firstMonth: number;
  readonly signals: readonly NamedSignal[];
  readonly horizon: number;
  readonly futures: number;
  readonly seed: number;
}

export interface PartInFleet {
  readonly history: MonthlyCounts;
  readonly pieces: PiecesTaken;
  readonly seed: number;
}

export interface PartFleet {
  readonly told: StoredFleet;
  /** Undefined where the machines tell nothing of the part. */
  readonly method: DemandMethod | undefined;
}

/** Whether the lives of the machines say how much of a part is needed, and by which figures. */
export function partFleet(fleet: ComponentFleet | undefined, { history, pieces, seed }: PartInFleet): PartFleet {
  if (fleet === undefined) return { told: { kind: "no-component" }, method: undefined };
  const { record, maker, signals } = fleet;
  const running = sum(record.running[0]);
  if (running === 0) return { told: { kind: "no-machines" }, method: undefined };
  const known = sum(record.beforeTest.lives.failed);
  if (known < fewestFailuresForFleet)
    return { told: { kind: "too-few-failures", failures: known, needed: fewestFailuresForFleet }, method: undefined };
  const use = partUse(history, record, { origin: history.length, pieces: pieces.mean });
  if (use === undefined) return { told: { kind: "no-repairs" }, method: undefined };
  const failures = fleet.failures();
  const { left, came, lives } = record.now;
  return {
    told: {
      kind: "fleet",
      maker,
      running,
      failures: sum(lives.failed),
      shape: rounded(failures.life.meanShape),
      lastFailures: use.failures,
      took: use.took,
      pieces: rounded(pieces.mean),
      comingYearly: sum(came),
      leavingYearly: rounded(1 - (1 - leavingMonthly(left)) ** 12),
      seasonal: fleet.seasonal,
      signals: signals.map(({ key, observed, expected }) => ({ key, observed, expected: rounded(expected) })),
    },
    method: fleetDemand({ failures, record, pieces, seed }),
  };
}

function leavingMonthly({ machines, months }: KnownFleet["left"]): number {
  return months > 0 ? Math.min(1, (machines + 0.5) / months) : 0;
}

function sum(counts: Float64Array | undefined): number {
  return counts?.reduce((total, count) => total + count, 0) ?? 0;
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}
