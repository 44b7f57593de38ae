import type { FieldProblem } from "@/app/_ui/error-summary";
import type { Erased } from "@/db/erasure/erase-customer";
import type { Due } from "@/db/retention/run-retention";

export interface ErasureState {
  readonly problems: readonly FieldProblem[];
  /** What was typed, shown again. */
  readonly texts: Readonly<Record<string, string>>;
  readonly tried?: Erased | undefined;
  readonly done?: Erased | undefined;
}

export interface TimesState {
  readonly problems: readonly FieldProblem[];
  readonly due?: readonly Due[] | undefined;
  readonly said?: string | undefined;
}
