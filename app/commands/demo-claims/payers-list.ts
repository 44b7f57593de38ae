import { readOnly } from "@/db/client";
import { type ClaimListRow, loadClaimList } from "@/db/queries/claim-list";
import { loadRemittance } from "@/db/queries/money-remittances";
import { keepRemittance } from "@/db/writes/money/keep-remittance";
import { postRemittance } from "@/db/writes/money/post-remittance";
import { readRemittance } from "@/db/writes/money/read-remittance";
import { setWording } from "@/db/writes/money/set-wording";
import { addDays, type Day } from "@/lib/calendar/day";
import { plainAmount } from "@/lib/format/plain-amount";
import { csvCell } from "@/synthetic-data/csv-file";

const by = "Ben";
const cutWords = "LABOR REDUCED TO ALLOWANCE";

/**
 * One list of the payer that owes answers to most claims, taken in as people take one in: a claim paid in full, one cut,
 * one credit for two claims, one rejected, and two lines that wait in the tray.
 * @returns how many lines it has; 0 where no payer has enough claims on their way
 */
export async function takeInDemoList(until: Day): Promise<number> {
  const [payer, claims] = await mostAwaited(until);
  const [full, cut, one, other, refused] = claims;
  if (payer === undefined || full === undefined || cut === undefined || one === undefined || other === undefined)
    return 0;
  const rows = [
    ["Your claim", "Serial", "Amount", "Remark"],
    [full.claimNumber, full.serial, plainAmount(full.claimedCents), ""],
    [cut.claimNumber, cut.serial, plainAmount(cut.claimedCents - 2_000), cutWords],
    [`${one.claimNumber} ${other.claimNumber}`, "", plainAmount(one.claimedCents + other.claimedCents), "BULK CREDIT"],
    ...(refused === undefined ? [] : [[refused.claimNumber, refused.serial, "0.00", "POP INVALID OR MISSING"]]),
    ["W-48821", "", "44.10", ""],
    ["", "", "see letter", "PARTS CREDIT TO FOLLOW"],
  ];
  const content = Buffer.from(
    `${rows.map((row) => row.map((cell) => csvCell(cell ?? "")).join(",")).join("\r\n")}\r\n`,
  );
  const paidOn = addDays(until, -4);
  const at = `${addDays(until, -3)}T14:00:00Z`;
  const kept = await keepRemittance({
    fileName: `credits-${paidOn}.csv`,
    content,
    payer,
    reference: `CR-${paidOn.replaceAll("-", "")}`,
    paidOn,
    currency: full.currency,
    by,
    at,
    today: until,
  });
  if (kept.kind !== "kept") return 0;
  const { remittanceId } = kept;
  const guessed = await readOnly((db) => loadRemittance(db, remittanceId));
  if (guessed === undefined) throw new Error("The list was not kept.");
  const read = await readRemittance({ remittanceId, columns: guessed.columns, by, today: until });
  if (read.kind === "refused") throw new Error(read.sentence);
  await setWording({ payer, payerText: cutWords, reason: "over_schedule", by, at });
  await setWording({ payer, payerText: "POP INVALID OR MISSING", reason: "purchase_date", by, at });
  const seen = await readOnly((db) => loadRemittance(db, remittanceId));
  await postRemittance({ remittanceId, seenVersion: seen?.version ?? 0, by, at });
  return rows.length - 1;
}

/** Claims on their way for long enough, of the payer that has most of them. */
async function mostAwaited(until: Day): Promise<readonly [string | undefined, readonly ClaimListRow[]]> {
  const sent = await readOnly((db) => loadClaimList(db, { states: ["sent", "received"], sort: "sent" }));
  const byPayer = new Map<string, ClaimListRow[]>();
  for (const claim of sent) {
    if (claim.lastSentOn === undefined || claim.lastSentOn > addDays(until, -6)) continue;
    byPayer.set(claim.payer, [...(byPayer.get(claim.payer) ?? []), claim]);
  }
  const [most] = [...byPayer].sort(([, a], [, b]) => b.length - a.length);
  return most ?? [undefined, []];
}
