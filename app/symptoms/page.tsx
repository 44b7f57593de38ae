import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import { loadSymptomList } from "@/db/queries/symptom-groups";
import { productTypes } from "@/lib/domain/product-type";
import { symptomOf } from "@/lib/domain/symptoms";
import { formatCounted } from "@/lib/format/format-count";

export const metadata: Metadata = { title: "Symptoms" };
export const dynamic = "force-dynamic";

export default async function SymptomsPage() {
  await mayOpen("/symptoms");
  const rows = await readOnly(loadSymptomList);
  return (
    <Page
      title={`${formatCounted(rows.length, "symptom")} on closed jobs`}
      above={<Link href="/repeats">Repeats</Link>}
      margin={<p>What the customer notices, by kind of appliance. Each leads to what turned out to be behind it.</p>}
    >
      {rows.length === 0 ? (
        <EmptyState kind="never-used" title="No closed job names a symptom">
          <p>Symptoms come with loaded jobs, and with jobs that are opened here.</p>
        </EmptyState>
      ) : (
        <Table
          caption="Symptoms by number of closed jobs"
          captionHidden
          columns={columns}
          rows={rows}
          rowKey={({ symptom, productType }) => `${symptom} ${productType}`}
        />
      )}
    </Page>
  );
}

type Row = Awaited<ReturnType<typeof loadSymptomList>>[number];

const columns: readonly Column<Row>[] = [
  {
    key: "symptom",
    head: "Symptom",
    cell: ({ symptom, productType }) => (
      <Link href={`/symptoms/${symptom}?type=${productType}`}>{symptomOf(symptom)?.name ?? symptom}</Link>
    ),
  },
  { key: "type", head: "Kind of appliance", cell: ({ productType }) => productTypes[productType] },
  { key: "jobs", head: "Closed jobs", kind: "number", cell: ({ jobs }) => jobs },
];
