import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import Link from "next/link";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { Field } from "@/app/_ui/field";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadPartTerms } from "@/db/queries/buying-terms";
import { loadPartList } from "@/db/queries/part-list";
import { loadShop } from "@/db/queries/shop";
import { normalised } from "@/lib/domain/normalised";
import { plainAmount } from "@/lib/format/plain-amount";
import { OnceForm } from "../../_components/once-form";
import { adviceWords } from "../../line-words";
import { needsOrder, partRows } from "../../parts-view";
import { addOrder } from "../actions";

export const metadata: Metadata = { title: "Add to the order list" };
export const dynamic = "force-dynamic";

export default async function NewOrderPage({ searchParams }: { readonly searchParams: Promise<AddressValues> }) {
  await mayOpen("/parts/orders/new");
  const { part: asked } = await searchParams;
  const key = typeof asked === "string" ? normalised(asked) : "";
  const { part, terms, shop } = await readOnly(async (db) => ({
    part: partRows(await loadPartList(db, [key]))[0],
    terms: (await loadPartTerms(db, [key])).get(key),
    shop: await loadShop(db),
  }));
  const advised = part !== undefined && needsOrder(part.line) ? part.line.pieces : usualQuantity(part);
  return (
    <Page
      above={<Link href="/parts/orders">Order list</Link>}
      title={
        part === undefined
          ? "Add a line to the order list"
          : `Add ${part.description || part.partNumber} to the order list`
      }
      margin={
        <p>
          The number of pieces is what the reorder point and the usual quantity give today; change it as you see fit. A
          draft changes no stock.
        </p>
      }
    >
      {part !== undefined && <p>{adviceWords(part)}</p>}
      <OnceForm action={addOrder} formKey={randomUUID()} submit="Add to the order list" back="/parts/orders">
        <Field label="Part number" name="part" width="short" value={part?.partNumber} />
        {part === undefined && <Field label="Name" name="description" />}
        <Field
          label="Pieces"
          name="quantity"
          inputMode="numeric"
          width="short"
          value={advised === undefined ? undefined : String(advised)}
        />
        <Field label="Supplier" name="supplier" value={terms?.supplier} />
        <Field
          label="Cost of one"
          name="unitCost"
          inputMode="decimal"
          width="short"
          unit={shop.currency}
          value={part?.unitCostCents === undefined ? undefined : plainAmount(part.unitCostCents)}
        />
        <input type="hidden" name="why" value={part === undefined ? "" : adviceWords(part)} />
        <Field label="Note" name="note" hint="May stay empty." />
      </OnceForm>
    </Page>
  );
}

function usualQuantity(part: ReturnType<typeof partRows>[number] | undefined): number | undefined {
  return part?.plan.order.kind === "quantity" ? part.plan.order.pieces : undefined;
}
