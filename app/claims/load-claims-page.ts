import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import {
  type ClaimCounts,
  type ClaimListRow,
  countClaims,
  loadClaimCounts,
  loadClaimList,
} from "@/db/queries/claim-list";
import {
  type ClaimableJob,
  type ClaimableTotals,
  countClaimable,
  loadClaimable,
  loadClaimableTotals,
} from "@/db/queries/claimable";
import { loadShop } from "@/db/queries/shop";
import { addDays, type Day } from "@/lib/calendar/day";
import { claimGroupKeys, claimGroups } from "@/lib/claims/life/waiting";
import type { ClaimsAddress, ClaimsTab } from "./read-claims-address";

export interface ClaimsView {
  readonly today: Day;
  readonly counts: ReadonlyMap<ClaimsTab, number>;
  readonly payers: readonly string[];
  /** How many rows the chosen list has under the filter, on all pages. */
  readonly fitting: number;
  readonly page: number;
  readonly pages: number;
  /** Claims of the chosen list on this page; empty on the list of covered work. */
  readonly claims: readonly ClaimListRow[];
  /** Covered work under the filter, this page of it; empty on the lists of claims. */
  readonly claimable: readonly ClaimableJob[];
  /** Covered work without the filter. */
  readonly allClaimable: ClaimableTotals;
}

/** Own choice: as many as can be read through, and fewer than can be made drafts at once. */
const rowsOnPage = 100;

export async function loadClaimsView(db: Reader, address: ClaimsAddress): Promise<ClaimsView> {
  const { tab, payer, words, within } = address;
  const today = todayIn((await loadShop(db)).timeZone);
  const { byState, payers } = await loadClaimCounts(db);
  const until = within === undefined ? undefined : addDays(today, within);
  const allClaimable = await loadClaimableTotals(db, today, until ?? today);
  const counts = new Map<ClaimsTab, number>([
    ["unclaimed", allClaimable.cases],
    ...claimGroupKeys.map((key) => [key, inGroup(byState, key)] as const),
  ]);
  const isFiltered = payer !== undefined || within !== undefined || (tab !== "unclaimed" && words !== undefined);
  const chosen = tab === "unclaimed" ? undefined : { ...address, states: claimGroups[tab], until };
  const counted = () => (chosen === undefined ? countClaimable(db, today, { payer, until }) : countClaims(db, chosen));
  const fitting = isFiltered ? await counted() : (counts.get(tab) ?? 0);
  const pages = Math.max(1, Math.ceil(fitting / rowsOnPage));
  const page = Math.min(address.page, pages); // a link to the last page outlives its rows
  const span = { offset: (page - 1) * rowsOnPage, limit: rowsOnPage };
  return {
    today,
    counts,
    payers: [...new Set([...payers, ...allClaimable.payers])].sort(),
    fitting,
    page,
    pages,
    claims: chosen === undefined ? [] : await loadClaimList(db, chosen, span),
    claimable: chosen === undefined ? await loadClaimable(db, today, { payer, until }, span) : [],
    allClaimable,
  };
}

function inGroup(byState: ClaimCounts["byState"], key: keyof typeof claimGroups): number {
  return claimGroups[key].reduce((sum, state) => sum + (byState.get(state) ?? 0), 0);
}
