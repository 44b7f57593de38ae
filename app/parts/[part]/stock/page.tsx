import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { Field } from "@/app/_ui/field";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field";
import { readOnly } from "@/db/client";
import { OnceForm } from "../../_components/once-form";
import { partHref } from "../../read-parts-address";
import { enterStock } from "../actions";
import { loadPart } from "../load-part";
import { placeName } from "../stock-words";

export const metadata: Metadata = { title: "Stock of a part" };
export const dynamic = "force-dynamic";

const kinds = [
  { value: "count", name: "Counted: so many lie there" },
  { value: "receipt", name: "Received, not from the order list" },
  { value: "return", name: "Brought back from a job" },
  { value: "scrap", name: "Scrapped, broken or sent away" },
  { value: "move", name: "Moved to another place" },
  { value: "reserve", name: "Put aside for a job" },
  { value: "release", name: "Set free again" },
] as const;

export default async function StockPage({ params }: { readonly params: Promise<{ readonly part: string }> }) {
  await mayOpen("/parts/[part]/stock");
  const { part: asked } = await params;
  const view = await readOnly((db) => loadPart(db, decodeURIComponent(asked)));
  if (view.kind !== "part") notFound();
  const { part, technicians, today } = view;
  const back = partHref(part.partKey);
  const places = [{ value: "", name: "Shelf" }, ...technicians.map((name) => ({ value: name, name: placeName(name) }))];
  return (
    <Page
      above={<Link href={back}>{part.partNumber}</Link>}
      title={`${part.description || part.partNumber}: what happened to the stock`}
      margin={<Basis />}
    >
      <OnceForm action={enterStock} formKey={randomUUID()} submit="Enter it" back={back}>
        <input type="hidden" name="part" value={part.partNumber} />
        <SelectField label="What happened" name="kind" choices={kinds} value="count" />
        <SelectField label="Where" name="place" choices={places} value="" />
        <Field label="Pieces" name="pieces" inputMode="numeric" width="short" hint="A whole number." />
        <SelectField label="Moved to" name="to" choices={places} value="" hint="Only where pieces were moved." />
        <Field label="Job" name="job" width="short" hint="Only where pieces are put aside or set free: its number." />
        <Field label="Day" name="on" width="short" value={today} hint="Such as 2026-03-31." />
        <Field label="Note" name="note" hint="May stay empty." />
      </OnceForm>
    </Page>
  );
}

function Basis() {
  return (
    <>
      <p>Stock is the sum of its entries. An entry is never changed or deleted: a count sets right what is wrong.</p>
      <p>
        Closed jobs enter what they used by themselves, from the technician’s truck where it carries the part, else from
        the shelf. Jobs completed up to a count are taken to be in it.
      </p>
    </>
  );
}
