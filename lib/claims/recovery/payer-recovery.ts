import type { Currency } from "@/lib/domain/money";
import type { ClaimState } from "../life/claim-standing";

/** One claim that was sent, as far as its money goes. */
export interface SentClaim {
  readonly payer: string;
  readonly currency: Currency;
  readonly state: ClaimState;
  readonly askedCents: number;
  readonly approvedCents: number | undefined;
  readonly paidCents: number;
  readonly clawedBackCents: number;
  readonly openCents: number;
  /** What the payer said first: undefined while it has not answered. */
  readonly firstAnswer: "in full" | "less" | "sent back" | undefined;
}

export interface PayerRecovery {
  readonly payer: string;
  readonly currency: Currency;
  readonly claims: number;
  readonly askedCents: number;
  readonly approvedCents: number;
  /** Received and not taken back again. */
  readonly keptCents: number;
  readonly clawedBackCents: number;
  readonly openCents: number;
  /** Asked, answered by a payment, and left unpaid while nobody has given it up. */
  readonly shortCents: number;
  readonly writtenOffCents: number;
  /** Claims with a first answer, and those accepted in full by it. */
  readonly answered: number;
  readonly acceptedAtFirst: number;
}

/** What each payer was asked and what came of it; one row for each currency, since they are never added. */
export function payerRecovery(claims: readonly SentClaim[]): readonly PayerRecovery[] {
  const groups = new Map<string, SentClaim[]>();
  for (const claim of claims) {
    const key = `${claim.payer}|${claim.currency}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [claim]);
    else group.push(claim);
  }
  return [...groups.values()].flatMap(recoveryOf).sort((a, b) => a.payer.localeCompare(b.payer, "en"));
}

function recoveryOf(claims: readonly SentClaim[]): readonly PayerRecovery[] {
  const [first] = claims;
  if (first === undefined) return [];
  const sum = (of: (claim: SentClaim) => number) => claims.reduce((all, claim) => all + of(claim), 0);
  const unpaid = (claim: SentClaim) => Math.max(0, claim.askedCents - claim.paidCents);
  return [
    {
      payer: first.payer,
      currency: first.currency,
      claims: claims.length,
      askedCents: sum((claim) => claim.askedCents),
      approvedCents: sum((claim) => claim.approvedCents ?? 0),
      keptCents: sum((claim) => claim.paidCents - claim.clawedBackCents),
      clawedBackCents: sum((claim) => claim.clawedBackCents),
      openCents: sum((claim) => claim.openCents),
      shortCents: sum((claim) => (claim.state === "short-paid" ? unpaid(claim) : 0)),
      writtenOffCents: sum((claim) => (claim.state === "written off" ? unpaid(claim) : 0)),
      answered: claims.filter(({ firstAnswer }) => firstAnswer !== undefined).length,
      acceptedAtFirst: claims.filter(({ firstAnswer }) => firstAnswer === "in full").length,
    },
  ];
}
