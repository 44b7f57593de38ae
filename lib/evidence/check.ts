// One kind of check: what is looked at or measured, how, in which power state, what each finding means and what it proves.
import type { Cause } from "@/lib/domain/cause";
import type { ProductType } from "@/lib/domain/product-type";
import type { MeterMode, PowerState, SourceMark } from "@/lib/domain/reading";
import type { CautionKey } from "./cautions";

export interface Check {
  /** Stable; intake files name readings by it. */
  readonly key: string;
  readonly name: string;
  /** Where the two test points go, or what is looked at. */
  readonly points: string;
  /** Modes the meter may be in; the first is the usual one. */
  readonly modes: readonly [MeterMode, ...MeterMode[]];
  readonly unit: string | undefined;
  readonly energy: PowerState;
  /** What must be stated for the reading to prove anything. */
  readonly needs: readonly ReadingNeed[];
  /** What a good part gives. */
  readonly expect: string;
  readonly proves: string;
  /** Closed list of words that an observation may use; empty for pure measurements. */
  readonly findings: Readonly<Record<string, Finding>>;
  /** Fallbacks where neither the model nor the reading's own sheet gives a range. */
  readonly general: readonly GeneralRange[];
  readonly cautions: readonly CautionKey[];
  /** Warmer than this, in degrees Celsius, the reading proves nothing. */
  readonly notAboveC?: number;
  /** Cause to name where the measurement is out of its range: the supply, the installation. */
  readonly outsideWhenBad?: Cause;
  /** Whether it can still be done after the repair, on the part that is held or on the machine. */
  readonly laterToo: boolean;
}

/**
 * isolated: part disconnected while measured. temperature: noted with the ohms. command, interlocks: without them zero
 * volts prove nothing; without the load neither does a voltage.
 */
export type ReadingNeed = "isolated" | "temperature" | "command" | "load" | "interlocks";

export interface Finding {
  readonly means: string;
  /** good: as it should be. bad: the part or the path failed. outside: the cause lies outside the part. */
  readonly state: "good" | "bad" | "outside";
  /** Given where the state is outside. */
  readonly cause?: Cause;
}

export interface GeneralRange {
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly unit: string;
  readonly modes?: readonly MeterMode[];
  readonly productTypes?: readonly ProductType[];
  /** Temperature at which it holds, in degrees Celsius. */
  readonly atC?: number;
  /**
   * true: so wide that it only screens nonsense; neither a value inside nor one outside decides anything, only an open
   * or shorted part does. The range of the model or of the part decides.
   */
  readonly screensOnly: boolean;
  /** Where only a value below this condemns; between it and `low` nothing is decided. */
  readonly condemnsBelow?: number;
  readonly source: string;
  readonly mark: SourceMark;
}
