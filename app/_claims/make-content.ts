import type { Reader } from "@/db/database-types";
import type { LockedClaim } from "@/db/writes/claims/locked-claim";
import type { MadeContent, NotSent } from "@/db/writes/claims/send-claim";
import type { Day } from "@/lib/calendar/day";
import { filingCheckTitles } from "@/lib/claims/checks/filing-case";
import { askedLines } from "@/lib/claims/life/asked-lines";
import { sentContent } from "@/lib/claims/life/sent-content";
import { neutralClaim } from "@/lib/claims/neutral/neutral-claim";
import { formatPlainDay } from "@/lib/format/format-day";
import { claimOf, loadClaim, type OpenClaim } from "./load-claim";

interface Sending {
  readonly today: Day;
  readonly sentOn: Day;
  /** By check, why it is sent although that check failed. */
  readonly reasons: Readonly<Record<string, string>>;
}

/** Judges a claim inside the sending transaction and makes what is sent, or says what stands in the way. */
export function contentMaker({ today, sentOn, reasons }: Sending) {
  return async (db: Reader, { row: { claimNumber } }: LockedClaim, filing: number): Promise<MadeContent> => {
    const open = await loadClaim(db, claimNumber, today);
    if (open === undefined) return stopped("The job or the policy of this claim is no longer on file.");
    const claim = claimOf(open);
    if (claim === undefined || open.packet === undefined) return blocked(open);
    const day = wrongDay(open, sentOn);
    if (day !== undefined) return stopped(day);
    const failed = open.checks.filter(({ verdict }) => verdict === "failed");
    const silent = failed.filter(({ key }) => (reasons[key] ?? "").trim() === "");
    if (silent.length > 0) {
      const problems = silent.map(({ key, fixes }) => ({
        check: key,
        sentence: `${filingCheckTitles[key]}: ${fixes.join(" ")} Mend it, or write why it is sent all the same.`,
      }));
      return { kind: "not sent", problems };
    }
    const overrides = failed.map(({ key, fixes }) => ({
      check: key,
      found: fixes.join(" "),
      reason: (reasons[key] ?? "").trim(),
    }));
    const { currency } = claim;
    const lines = askedLines(claim);
    const { packet } = open;
    const neutral = neutralClaim({ given: open.claim.given, claim, packet });
    const content = sentContent({ claimNumber, filing, sentOn, currency, lines, claim: neutral, packet });
    return { kind: "content", content, overrides };
  };
}

function wrongDay({ today, row }: OpenClaim, sentOn: Day): string | undefined {
  if (sentOn > today) return `${formatPlainDay(sentOn)} is still to come: enter the day on which it was sent.`;
  if (sentOn < row.completedOn)
    return `${formatPlainDay(sentOn)} is before the job was completed, ${formatPlainDay(row.completedOn)}.`;
  return undefined;
}

function blocked({ claim: { assembly } }: OpenClaim): NotSent {
  const reasons = assembly.kind === "blocked" ? assembly.reasons : [];
  return { kind: "not sent", problems: reasons.map(({ sentence }) => ({ check: undefined, sentence })) };
}

function stopped(sentence: string): NotSent {
  return { kind: "not sent", problems: [{ check: undefined, sentence }] };
}
