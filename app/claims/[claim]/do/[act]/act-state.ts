import type { FieldProblem } from "@/app/_ui/error-summary";
import type { VersionNow } from "@/db/writes/claims/act-on-claim";

export interface ActState {
  readonly problems: readonly FieldProblem[];
  /** Somebody recorded something since the form was opened. */
  readonly stale?: { readonly seenVersion: number; readonly now: VersionNow } | undefined;
}

export const untouched: ActState = { problems: [] };
