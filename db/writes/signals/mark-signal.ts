import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { MarkKind } from "@/lib/signals/signal-marks";
import { inTransaction } from "../../in-transaction";

export interface NewMark {
  readonly signalKey: string;
  readonly kind: Exclude<MarkKind, "undo">;
  readonly reason: string;
  readonly by: string;
  /** The run that was looked at. */
  readonly asOf: Day;
}

export type MarkResult =
  | { readonly kind: "marked"; readonly markId: number }
  | { readonly kind: "no-such-signal" }
  | { readonly kind: "reason-missing" };

/** Says something of a signal, with what it counted at the time: later evidence is held against that. */
export async function markSignal({ signalKey, kind, reason, by, asOf }: NewMark): Promise<MarkResult> {
  if ((kind === "explain" || kind === "dismiss") && reason.trim() === "") return { kind: "reason-missing" };
  return await inTransaction<MarkResult>(async (tx) => {
    const [row] = await tx.rows<{ markId: number }>(sql`
      insert into signal_marks (signal_key, kind, reason, by, at, as_of, observed, expected)
      select signal_key, ${kind}, ${reason.trim()}, ${by}, now(), as_of, observed, expected
      from found_signals where signal_key = ${signalKey} and as_of = ${asOf} returning mark_id::int as "markId"`);
    return row === undefined ? { kind: "no-such-signal" } : { kind: "marked", markId: row.markId };
  });
}

export type UndoResult =
  | { readonly kind: "undone" }
  | { readonly kind: "undone-already" }
  | { readonly kind: "no-such-mark" };

/** Takes a mark back by a mark of its own, once. */
export async function undoMark({ markId, by }: { readonly markId: number; readonly by: string }): Promise<UndoResult> {
  return await inTransaction<UndoResult>(async (tx) => {
    const [mark] = await tx.rows<{ undone: boolean }>(sql`
      select exists (select from signal_marks u where u.undoes = m.mark_id) as undone from signal_marks m
      where m.mark_id = ${markId} and m.kind <> 'undo' for update`);
    if (mark === undefined) return { kind: "no-such-mark" };
    if (mark.undone) return { kind: "undone-already" };
    await tx.execute(sql`
      insert into signal_marks (signal_key, kind, undoes, reason, by, at, as_of, observed, expected)
      select signal_key, 'undo', mark_id, '', ${by}, now(), as_of, observed, expected from signal_marks where mark_id = ${markId}`);
    return { kind: "undone" };
  });
}
