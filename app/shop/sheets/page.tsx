import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import { loadEditedSheets } from "@/db/queries/sheet-versions";
import { componentOf } from "@/lib/domain/components";
import { productTypes } from "@/lib/domain/product-type";
import { formatCounted } from "@/lib/format/format-count";
import { type Sheet, sheetKey } from "@/lib/sheets/sheet";
import { shippedSheets } from "@/lib/sheets/shipped-sheets";

export const metadata: Metadata = { title: "Check sheets" };
export const dynamic = "force-dynamic";

export default async function SheetsPage() {
  await mayOpen("/shop/sheets");
  const edited = await readOnly(loadEditedSheets);
  const rows = shippedSheets().map((sheet): Row => ({ sheet, version: edited.get(sheetKey(sheet)) ?? 1 }));
  return (
    <Page
      title={`${formatCounted(rows.length, "check sheet")}, ${edited.size === 0 ? "none edited here" : `${edited.size} edited here`}`}
      above={<Link href="/shop">Shop</Link>}
      margin={
        <p>
          Version 1 comes with the program, made from the rules of evidence. An edited version holds for jobs that are
          begun from then on; a job keeps the versions that it was begun by.
        </p>
      }
    >
      <Table
        caption="Sheets by appliance and component"
        captionHidden
        columns={columns}
        rows={rows}
        rowKey={({ sheet }) => sheetKey(sheet)}
      />
    </Page>
  );
}

interface Row {
  readonly sheet: Sheet;
  readonly version: number;
}

const columns: readonly Column<Row>[] = [
  {
    key: "component",
    head: "Sheet",
    cell: ({ sheet }) => (
      <Link href={`/shop/sheets/${sheetKey(sheet)}`}>
        {componentOf(sheet.component)?.name ?? sheet.component}, {productTypes[sheet.productType].toLowerCase()}
      </Link>
    ),
  },
  { key: "steps", head: "Checks", kind: "number", wideOnly: true, cell: ({ sheet }) => sheet.steps.length },
  { key: "version", head: "Version", kind: "number", cell: ({ version }) => version },
];
