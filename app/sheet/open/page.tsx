import type { Metadata } from "next";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadTechnicians } from "@/db/queries/sheet-lists";
import { loadShop } from "@/db/queries/shop";
import { OpenForm } from "./open-form";

export const metadata: Metadata = { title: "Open a job" };
export const dynamic = "force-dynamic";

export default async function OpenJobPage() {
  await mayOpen("/sheet/open");
  const { names, today } = await readOnly(async (db) => ({
    names: await loadTechnicians(db),
    today: todayIn((await loadShop(db)).timeZone),
  }));
  return (
    <Page
      title="Open a job"
      above={<a href="/sheet">Jobs to do</a>}
      margin={
        <p>
          Write the complaint as the customer says it and when it happens; it decides what is looked for, and by its day
          whether the unit is covered. It is not kept on the technician’s phone.
        </p>
      }
    >
      <OpenForm technicians={names} today={today} />
    </Page>
  );
}
