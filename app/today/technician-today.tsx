import { todayIn } from "@/app/_clock/today";
import type { SignedIn } from "@/app/_people/load-signed-in";
import { ownJobsOnly } from "@/app/_people/own-jobs-only";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadAsks, loadOpenJobs } from "@/db/queries/sheet-lists";
import { loadShop } from "@/db/queries/shop";
import { DueList } from "./_components/due-list";
import { todayFinding } from "./due-lines";
import { technicianLines } from "./technician-lines";

/** What waits for one technician: what the desk asks, and the open jobs that are theirs or nobody's. */
export async function TechnicianToday({ person }: { readonly person: SignedIn }) {
  const { technician } = ownJobsOnly(person);
  const { asks, open, today } = await readOnly(async (db) => ({
    asks: await loadAsks(db, { open: true, technician }),
    open: await loadOpenJobs(db, technician, { orNobodys: true }),
    today: todayIn((await loadShop(db)).timeZone),
  }));
  const lines = technicianLines(asks, open, today);
  return (
    <Page
      title={todayFinding(lines)}
      margin={
        <p>Jobs under the name {person.technician ?? "of nobody yet"}, and open ones that nobody was named for.</p>
      }
    >
      {lines.length === 0 ? (
        <EmptyState kind="nothing-due" title="No job is open for you">
          <p>The desk opens a job, or you open one under Open jobs.</p>
        </EmptyState>
      ) : (
        <DueList lines={lines} />
      )}
    </Page>
  );
}
