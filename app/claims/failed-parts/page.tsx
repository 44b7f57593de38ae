import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import Link from "next/link";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Field } from "@/app/_ui/field";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field";
import { readOnly } from "@/db/client";
import { type HeldPart, listedDays, loadHeldParts } from "@/db/queries/held-parts";
import { loadShop } from "@/db/queries/shop";
import type { Day } from "@/lib/calendar/day";
import { partFateKeys, partFates } from "@/lib/claims/recovery/part-fate";
import { formatCounted } from "@/lib/format/format-count";
import { ManyForm } from "../_components/many-form";
import { PartsTable } from "./_components/parts-table";
import { recordFates } from "./fate-actions";

export const metadata: Metadata = { title: "Failed parts" };
export const dynamic = "force-dynamic";

export default async function FailedPartsPage() {
  await mayOpen("/claims/failed-parts");
  const { parts, today } = await readOnly(async (db) => {
    const today = todayIn((await loadShop(db)).timeZone);
    return { today, parts: await loadHeldParts(db, today) };
  });
  const here = parts.filter(({ gone }) => gone === undefined);
  const kept = here.filter(({ hold }) => hold.kind !== "may go");
  const free = here.filter(({ hold }) => hold.kind === "may go");
  const gone = parts.filter((part) => part.gone !== undefined);
  return (
    <Page
      title={findingOf(kept, free)}
      above={<Link href="/claims">Claims</Link>}
      margin={<Basis />}
      actions={kept.length > 0 && <ButtonLink href="/claims/failed-parts/tags">Tags to print</ButtonLink>}
      wide
    >
      {parts.length === 0 ? (
        <EmptyState kind="nothing-due" title="No payer holds a failed part" />
      ) : (
        <ManyForm
          act={recordFates}
          button="Enter it for the chosen"
          formKey={randomUUID()}
          fields={<FateFields today={today} />}
          choosesAll={false}
        >
          <PartsTable caption="To keep" head="Keep until" parts={kept} today={today} />
          <PartsTable caption="May go" head="May go" parts={free} today={today} />
          <PartsTable caption="Gone" head="Where it went" parts={gone} today={today} />
        </ManyForm>
      )}
    </Page>
  );
}

/** What became of the chosen parts; one form for all, as they go in one parcel or one bin. */
function FateFields({ today }: { readonly today: Day }) {
  const fates = partFateKeys.map((value) => ({ value, name: partFates[value] }));
  return (
    <>
      <div className="cluster">
        <SelectField
          label="What became of it"
          name="fate"
          choices={[...fates, { value: "on shelf", name: "On the shelf after all" }]}
        />
        <Field label="Day" name="on" type="date" width="short" value={today} />
        <Field label="Tag or parcel" name="tag" width="short" />
      </div>
      <Field label="Reason" name="reason" hint="Needed before its time has come, or to take an entry back." />
    </>
  );
}

function findingOf(kept: readonly HeldPart[], free: readonly HeldPart[]): string {
  const go = free.length === 0 ? "" : `; ${formatCounted(free.length, "part")} may go`;
  return kept.length === 0
    ? `No failed part has to be kept${go}`
    : `${formatCounted(kept.length, "failed part")} must be kept for ${kept.length === 1 ? "its payer" : "payers"}${go}`;
}

function Basis() {
  return (
    <>
      <p>
        Parts of claims that were sent. The last day is the payer’s own clock in its terms, counted from the filing or
        from the payment; while an audit is open, its parts stay whatever the clock says.
      </p>
      <p>A part that is scrapped too early, or sent back late, can cost the whole claim.</p>
      <p>
        Parts that may go, or are gone, are listed for {listedDays} days. What was entered is never deleted; a mistake
        is taken back by another entry.
      </p>
    </>
  );
}
