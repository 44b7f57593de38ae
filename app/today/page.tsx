import type { Metadata } from "next";
import Link from "next/link";
import { connection } from "next/server";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadClaimableTotals } from "@/db/queries/claimable";
import { loadClaimsDue } from "@/db/queries/claims-due";
import { loadMoneyDue } from "@/db/queries/money-today";
import { keptRecordCounts } from "@/db/queries/record-counts";
import { loadAsks, loadOpenJobs } from "@/db/queries/sheet-lists";
import { loadShop } from "@/db/queries/shop";
import { loadTodayFacts } from "@/db/queries/today";
import { addDays } from "@/lib/calendar/day";
import { Basis } from "./_components/basis";
import { DueList } from "./_components/due-list";
import { claimLines, urgentFirst } from "./claim-lines";
import { dueLines, todayFinding, urgentDays } from "./due-lines";
import { moneyLines } from "./money-lines";
import { technicianLines } from "./technician-lines";
import { TechnicianToday } from "./technician-today";

export const metadata: Metadata = { title: "Today" };

const draftLimit = 20;

export default async function TodayPage() {
  const person = await mayOpen("/today");
  if (person.role === "technician") return <TechnicianToday person={person} />;
  await connection();
  const { facts, today, due, money, claimable, asks, open } = await readOnly(async (db) => {
    const { timeZone } = await loadShop(db);
    const today = todayIn(timeZone);
    const facts = await loadTodayFacts(db, { timeZone, draftLimit, counts: await keptRecordCounts(db) });
    const due = await loadClaimsDue(db, { today, limit: draftLimit });
    const money = await loadMoneyDue(db, today);
    const claimable = await loadClaimableTotals(db, today, addDays(today, urgentDays));
    const asks = await loadAsks(db, { open: true });
    return { facts, today, due, money, claimable, asks, open: await loadOpenJobs(db, undefined) };
  });
  const lines = urgentFirst([
    ...dueLines({ ...facts, claimable }, today),
    ...claimLines(due, today),
    ...moneyLines(money, today),
    ...technicianLines(asks, open, today),
  ]);
  return (
    <Page
      title={facts.lastLoad === undefined ? "Nothing has been loaded yet" : todayFinding(lines)}
      margin={<Basis facts={facts} />}
    >
      {facts.lastLoad === undefined ? (
        <EmptyState kind="never-used" title="Start with the units in service and the closed jobs">
          <p>
            <Link href="/files/new">Load a file</Link>. It is checked row by row before anything is stored, and can be
            taken back whole.
          </p>
        </EmptyState>
      ) : (
        <DueList lines={lines} />
      )}
      {facts.closedJobs > 0 && (
        <p>
          What fails, how often and how sure that is stands under <Link href="/repeats">Repeats</Link>.
        </p>
      )}
    </Page>
  );
}
