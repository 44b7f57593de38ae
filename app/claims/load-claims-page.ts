import { type ClaimableJob, loadClaimable } from "@/app/_claims/load-claimable";
import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import { type ClaimCounts, type ClaimListRow, loadClaimCounts, loadClaimList } from "@/db/queries/claim-list";
import { loadShop } from "@/db/queries/shop";
import { addDays, type Day } from "@/lib/calendar/day";
import { answerDays, claimGroupKeys, claimGroups } from "@/lib/claims/life/waiting";
import type { ClaimsAddress, ClaimsTab } from "./read-claims-address";

export interface ClaimsView {
  readonly today: Day;
  readonly counts: ReadonlyMap<ClaimsTab, number>;
  readonly payers: readonly string[];
  /** Claims of the chosen list; empty on the list of covered work. */
  readonly claims: readonly ClaimListRow[];
  readonly claimable: readonly ClaimableJob[];
  /** Covered work without the filter. */
  readonly allClaimable: readonly ClaimableJob[];
}

export async function loadClaimsView(db: Reader, address: ClaimsAddress): Promise<ClaimsView> {
  const { tab, payer, within } = address;
  const today = todayIn((await loadShop(db)).timeZone);
  const { byState, payers } = await loadClaimCounts(db);
  const allClaimable = await loadClaimable(db, today);
  const until = within === undefined ? undefined : addDays(today, within);
  const claims = tab === "unclaimed" ? [] : await loadClaimList(db, { ...address, states: claimGroups[tab] });
  return {
    today,
    counts: new Map([
      ["unclaimed", allClaimable.length],
      ...claimGroupKeys.map((key) => [key, inGroup(byState, key)] as const),
    ]),
    payers: [...new Set([...payers, ...allClaimable.map(({ claim }) => claim.source.payerName)])].sort(),
    claims: until === undefined ? claims : claims.filter((row) => isDueBy(row, until)),
    claimable: allClaimable.filter(
      ({ claim }) =>
        (payer === undefined || claim.source.payerName === payer) &&
        (until === undefined || claim.filing.lastDay <= until),
    ),
    allClaimable,
  };
}

function inGroup(byState: ClaimCounts["byState"], key: keyof typeof claimGroups): number {
  return claimGroups[key].reduce((sum, state) => sum + (byState.get(state) ?? 0), 0);
}

function isDueBy(row: ClaimListRow, until: Day): boolean {
  const due = dueOn(row);
  return due !== undefined && due <= until;
}

/** The day that the list counts days to. */
function dueOn({ state, fileBy, resubmitBy, lastSentOn }: ClaimListRow): Day | undefined {
  if (state === "draft") return fileBy;
  return resubmitBy ?? (lastSentOn && addDays(lastSentOn, answerDays));
}
