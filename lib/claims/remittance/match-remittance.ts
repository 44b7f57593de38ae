import { daysBetween } from "@/lib/calendar/day";
import { normalised } from "@/lib/domain/normalised";
import type { AwaitedClaim, ClaimShare, MatchedBy, RemittanceLine, RemittanceMatch } from "./remittance-line";
import { openOf, splitPayment } from "./split-payment";

/** Days by which a payer's completion day may differ from ours and still point at the same job. Common practice, no source. */
const nearDays = 3;

/**
 * Finds for each line of a payer's list the claim that it pays: by our claim number, by the payer's own, by our job
 * number; else by serial, day and amount together, which somebody must confirm. A line that fits several claims, or
 * none, stays in the tray: money is never posted on a guess.
 */
export function matchRemittance(lines: readonly RemittanceLine[], claims: readonly AwaitedClaim[]): RemittanceMatch[] {
  const find = claimFinder(claims);
  return lines.map((line) => byReference(line, find) ?? bySerial(line, claims));
}

type Finder = (by: Exclude<MatchedBy, "serial, day and amount">, reference: string) => readonly AwaitedClaim[];

function claimFinder(claims: readonly AwaitedClaim[]): Finder {
  const names = {
    "claim number": index(claims, (claim) => claim.claimNumber),
    "payer's reference": index(claims, (claim) => claim.payerReference),
    "job number": index(claims, (claim) => claim.jobNumber),
  };
  return (by, reference) => names[by].get(normalised(reference)) ?? [];
}

function index(claims: readonly AwaitedClaim[], name: (claim: AwaitedClaim) => string | undefined) {
  const found = new Map<string, AwaitedClaim[]>();
  for (const claim of claims) {
    const key = normalised(name(claim) ?? "");
    if (key !== "") found.set(key, [...(found.get(key) ?? []), claim]);
  }
  return found;
}

function byReference(line: RemittanceLine, find: Finder): RemittanceMatch | undefined {
  const words = line.references.flatMap((text) => [text, ...text.split(/[\s,;/]+/)]);
  for (const by of ["claim number", "payer's reference", "job number"] as const) {
    const found = distinct(words.flatMap((word) => (normalised(word) === "" ? [] : find(by, word))));
    const [only] = found;
    if (only === undefined) continue;
    if (found.length > 1) return manyClaims(line, by, found);
    return oneClaim(line, only, by);
  }
  return undefined;
}

function oneClaim(line: RemittanceLine, claim: AwaitedClaim, by: MatchedBy): RemittanceMatch {
  const wrong = whyNot(line, claim);
  if (wrong !== undefined) return unmatched(line, `${claim.claimNumber} is named by its ${by}, but ${wrong}.`, [claim]);
  const split = splitPayment(line, claim.lines);
  if (split === undefined)
    return unmatched(line, `${claim.claimNumber} asks for no ${line.item}, which this line pays.`, [claim]);
  const shares = [{ claimNumber: claim.claimNumber, ...split }];
  return { kind: "matched", row: line.row, by, confidence: "sure", reason: `The line names the ${by}.`, shares };
}

/** One credit for several claims: only where it is exactly what they still ask, so that nothing has to be guessed. */
function manyClaims(line: RemittanceLine, by: MatchedBy, claims: readonly AwaitedClaim[]): RemittanceMatch {
  const open = claims.reduce((sum, claim) => sum + openCents(claim), 0);
  if (open !== line.paidCents || claims.some((claim) => claim.currency !== line.currency))
    return unmatched(
      line,
      `The line names ${claims.length} claims, and its sum is not what they still ask together.`,
      claims,
    );
  const shares = claims.map(
    (claim): ClaimShare => ({
      claimNumber: claim.claimNumber,
      lines: claim.lines.map((each) => ({ line: each.line, cents: openOf(each) })),
      split: "pays in full",
    }),
  );
  const reason = `One credit for ${claims.length} claims; its sum is what they still ask together.`;
  return { kind: "matched", row: line.row, by, confidence: "sure", reason, shares };
}

function bySerial(line: RemittanceLine, claims: readonly AwaitedClaim[]): RemittanceMatch {
  const serial = normalised(line.serial ?? "");
  if (serial === "") return unmatched(line, "The line names no claim, job or serial that we know.", []);
  const same = claims.filter((claim) => normalised(claim.serial ?? "") === serial);
  if (same.length === 0) return unmatched(line, `No claim that was sent is for serial ${line.serial}.`, []);
  const near = same.filter((claim) => isNear(line, claim) && whyNot(line, claim) === undefined);
  const exact = near.filter((claim) => splitPayment(line, claim.lines)?.split !== "by what was asked");
  const [only] = exact.length > 0 ? exact : near;
  const isAlone = (exact.length > 0 ? exact : near).length === 1;
  const split = only && isAlone ? splitPayment(line, only.lines) : undefined;
  if (only === undefined || split === undefined)
    return unmatched(
      line,
      "The serial fits, but day and amount don’t point at one claim.",
      near.length > 0 ? near : same,
    );
  const reason = `Serial ${line.serial} fits${line.completedOn ? ", and so does the day" : ""}; ${split.split === "by what was asked" ? "the amount is less than was asked" : "the amount is what was asked"}.`;
  const shares = [{ claimNumber: only.claimNumber, ...split }];
  return { kind: "matched", row: line.row, by: "serial, day and amount", confidence: "likely", reason, shares };
}

function isNear(line: RemittanceLine, claim: AwaitedClaim): boolean {
  return line.completedOn === undefined || Math.abs(daysBetween(line.completedOn, claim.completedOn)) <= nearDays;
}

function whyNot(line: RemittanceLine, claim: AwaitedClaim): string | undefined {
  if (line.currency !== claim.currency) return `it is in ${claim.currency} and the payment in ${line.currency}`;
  const paid = claim.lines.reduce((sum, each) => sum + each.paidCents - each.clawedBackCents, 0);
  if (line.paidCents < 0 && -line.paidCents > paid) return "more would be taken back than was paid";
  if (line.paidCents > 0 && openCents(claim) === 0) return "nothing of it is open: it may be paid twice";
  return undefined;
}

function openCents({ lines }: AwaitedClaim): number {
  return lines.reduce((sum, line) => sum + openOf(line), 0);
}

function distinct(claims: readonly AwaitedClaim[]): AwaitedClaim[] {
  return [...new Map(claims.map((claim) => [claim.claimNumber, claim])).values()];
}

function unmatched(line: RemittanceLine, reason: string, candidates: readonly AwaitedClaim[]): RemittanceMatch {
  return { kind: "unmatched", row: line.row, reason, candidates: candidates.map(({ claimNumber }) => claimNumber) };
}
