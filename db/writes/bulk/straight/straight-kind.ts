import type { Transaction } from "@/db/database-types";
import type { Stage } from "../../staging/stage-rows";
import type { PlainFile } from "../stage-plain";
import { straightJobs } from "./straight-jobs";
import type { Gatherer } from "./straight-reader";

/** How rows of a kind go straight into their table. */
export interface StraightKind {
  /** Temporary tables of what the rows tell together are named after it. */
  readonly table: string;
  readonly keys: readonly string[];
  readonly gatherer: () => Promise<Gatherer>;
  /** @throws NotStraight where any row must be looked at by itself */
  readonly agree: () => Promise<void>;
  /** Stores what hangs on the rows. @param fills  tables that are bare while they are filled */
  readonly store: (batchId: number, fills: readonly string[]) => Promise<void>;
  /** SQL for the models that the rows concern, as `id`. */
  readonly models: string;
}

/** Undefined for kinds that have no such way, and for files with columns that are compared with what is on file. */
export async function straightKind(
  tx: Transaction,
  { kind }: Omit<Stage, "table">,
  file: PlainFile,
): Promise<StraightKind | undefined> {
  return kind.kind === "jobs" ? straightJobs(tx, kind, file) : undefined;
}
