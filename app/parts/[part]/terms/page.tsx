import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { Field } from "@/app/_ui/field";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field";
import { readOnly } from "@/db/client";
import { plainAmount } from "@/lib/format/plain-amount";
import { assumedTerms, usualRisk } from "@/lib/stock/buying-terms";
import { OnceForm } from "../../_components/once-form";
import { partHref } from "../../read-parts-address";
import { keepTerms } from "../actions";
import { loadPart } from "../load-part";

export const metadata: Metadata = { title: "How a part is bought" };
export const dynamic = "force-dynamic";

const criticalities = [
  { value: "vital", name: `Vital: without it the machine stands still (usually 1 in ${usualRisk.vital})` },
  { value: "usual", name: `Usual (usually 1 in ${usualRisk.usual})` },
  { value: "can wait", name: `Can wait: it is ordered for the job anyway (usually 1 in ${usualRisk["can wait"]})` },
] as const;
const risks = [5, 10, 20, 50, 100].map((value) => ({ value: String(value), name: `1 in ${value}` }));

export default async function TermsPage({ params }: { readonly params: Promise<{ readonly part: string }> }) {
  await mayOpen("/parts/[part]/terms");
  const { part: asked } = await params;
  const view = await readOnly((db) => loadPart(db, decodeURIComponent(asked)));
  if (view.kind !== "part") notFound();
  const { part } = view;
  const said = part.terms;
  const terms = said ?? { ...assumedTerms, criticality: "usual" as const };
  const back = partHref(part.partKey);
  const risk = String(terms.shortOneIn);
  return (
    <Page
      above={<Link href={back}>{part.partNumber}</Link>}
      title={`${part.description || part.partNumber}: how it is bought`}
      margin={<Basis />}
    >
      <OnceForm action={keepTerms} formKey={randomUUID()} submit="Keep these" back={back}>
        <input type="hidden" name="part" value={part.partNumber} />
        <input type="hidden" name="version" value={said?.version ?? 0} />
        <SelectField
          label="Risk: short in no more than"
          name="shortOneIn"
          choices={
            risks.some(({ value }) => value === risk) ? risks : [...risks, { value: risk, name: `1 in ${risk}` }]
          }
          value={risk}
          hint="Of the waits for a delivery."
        />
        <SelectField
          label="How badly a job needs it"
          name="criticality"
          choices={criticalities}
          value={terms.criticality}
        />
        <Field
          label="Lead time in days"
          name="leadDays"
          width="short"
          value={terms.leadDays.join(", ")}
          hint="As the supplier states it, such as 5; or deliveries as they were, such as 4, 6, 9. Orders received here are added."
        />
        <Field
          label="Days between two looks at the shelf"
          name="reviewDays"
          inputMode="numeric"
          width="short"
          value={String(terms.reviewDays)}
        />
        <Field label="Pieces in a pack" name="pack" inputMode="numeric" width="short" value={String(terms.pack)} />
        <Field
          label="Cost of one"
          name="unitCost"
          inputMode="decimal"
          width="short"
          unit={part.currency}
          value={said?.unitCostCents === undefined ? "" : plainAmount(said.unitCostCents)}
          hint="Blank: as the price list or the last job has it."
        />
        <Field
          label="Cost of an order besides the parts"
          name="orderCost"
          inputMode="decimal"
          width="short"
          unit={part.currency}
          value={plainAmount(terms.orderCostCents)}
        />
        <Field
          label="Cost of a year on the shelf"
          name="holdingPercent"
          inputMode="numeric"
          width="short"
          unit="in 100 of its cost"
          value={String(terms.holdingPercent)}
        />
        <Field label="Supplier" name="supplier" value={said?.supplier} />
        <Field
          label="Superseded by"
          name="supersededBy"
          width="short"
          value={said?.supersededBy}
          hint="A newer number, where the catalogue does not say it."
        />
        <Field
          label="Last day to order"
          name="lastBuyOn"
          width="short"
          value={said?.lastBuyOn}
          hint="Where it will no longer be made, such as 2026-03-31."
        />
      </OnceForm>
    </Page>
  );
}

function Basis() {
  return (
    <>
      <p>Reorder point and order quantity follow from these and from what is expected of the part.</p>
      <p>
        Where nothing is said: {assumedTerms.reviewDays} days between two looks, packs of one,{" "}
        {assumedTerms.holdingPercent} in 100 of its cost a year for what lies there, and short in 1 of{" "}
        {assumedTerms.shortOneIn} waits. Own choice, no source.
      </p>
    </>
  );
}
