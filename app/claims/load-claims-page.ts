import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import { type ClaimCounts, type ClaimListRow, loadClaimCounts, loadClaimList } from "@/db/queries/claim-list";
import { type ClaimableJob, type ClaimableTotals, loadClaimable, loadClaimableTotals } from "@/db/queries/claimable";
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
  /** Covered work under the filter; empty on the lists of claims. */
  readonly claimable: readonly ClaimableJob[];
  /** Covered work without the filter. */
  readonly allClaimable: ClaimableTotals;
}

export async function loadClaimsView(db: Reader, address: ClaimsAddress): Promise<ClaimsView> {
  const { tab, payer, within } = address;
  const today = todayIn((await loadShop(db)).timeZone);
  const { byState, payers } = await loadClaimCounts(db);
  const until = within === undefined ? undefined : addDays(today, within);
  const allClaimable = await loadClaimableTotals(db, today, until ?? today);
  const claims = tab === "unclaimed" ? [] : await loadClaimList(db, { ...address, states: claimGroups[tab] });
  return {
    today,
    counts: new Map([
      ["unclaimed", allClaimable.cases],
      ...claimGroupKeys.map((key) => [key, inGroup(byState, key)] as const),
    ]),
    payers: [...new Set([...payers, ...allClaimable.payers])].sort(),
    claims: until === undefined ? claims : claims.filter((row) => isDueBy(row, until)),
    claimable: tab === "unclaimed" ? await loadClaimable(db, today, { payer, until }) : [],
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
