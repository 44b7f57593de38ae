import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Field } from "@/app/_ui/field";
import { FilterForm } from "@/app/_ui/filter-form";
import { ListPages } from "@/app/_ui/list-pages";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import { readOnly } from "@/db/client";
import { keptRecordCounts } from "@/db/queries/record-counts";
import { loadLookAlikes, loadUnitList, type UnitListRow } from "@/db/queries/unit-list";
import { productTypes } from "@/lib/domain/product-type";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";

export const metadata: Metadata = { title: "Units" };
export const dynamic = "force-dynamic";

const rowsOnPage = 50;

interface Props {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function UnitsPage({ searchParams }: Props) {
  await mayOpen("/units");
  const values = await searchParams;
  const words =
    typeof values.words === "string" && values.words.trim() !== "" ? values.words.trim().slice(0, 100) : undefined;
  const asked = typeof values.page === "string" ? Number(values.page) : 1;
  const page = Number.isSafeInteger(asked) && asked >= 1 && asked <= 1_000_000 ? asked : 1;
  const { list, alike } = await readOnly(async (db) => {
    const { units: allUnits } = await keptRecordCounts(db);
    const list = await loadUnitList(db, words, { offset: (page - 1) * rowsOnPage, limit: rowsOnPage, allUnits });
    return { list, alike: words !== undefined && list.total === 0 ? await loadLookAlikes(db, words) : [] };
  });
  const to = (target: number) =>
    `/units?${new URLSearchParams({ ...(words === undefined ? {} : { words }), page: String(target) })}`;
  return (
    <Page
      title={
        words === undefined ? formatCounted(list.total, "unit") : `${formatCounted(list.total, "unit")} with “${words}”`
      }
      margin={<Basis />}
      wide
    >
      <FilterForm
        action="/units"
        words={words === undefined ? "All units" : `Serial or model with “${words}”`}
        clearHref={words === undefined ? undefined : "/units"}
      >
        <Field label="Serial or model" name="words" type="search" value={words} />
      </FilterForm>
      {list.rows.length > 0 && (
        <Table
          caption="Units, those with the latest job first"
          captionHidden
          columns={columns}
          rows={list.rows}
          rowKey={(row) => row.unitId}
        />
      )}
      {list.total === 0 && words === undefined && (
        <EmptyState kind="never-used" title="No units yet">
          <p>
            <Link href="/files/new">Load the units in service</Link>: they are what failures are divided by.
          </p>
        </EmptyState>
      )}
      {list.total === 0 && words !== undefined && (
        <EmptyState kind="filtered-away" title="We have not seen this serial or model">
          {alike.length > 0 && (
            <>
              <p>
                Letters and digits that look alike (0 and O, 1 and I, 5 and S, 8 and B) may have been mixed up. Similar:
              </p>
              <ul>
                {alike.map((row) => (
                  <li key={row.unitId}>
                    <Tag href={`/units/${row.unitId}`}>{row.serial}</Tag> {row.maker} {row.model}
                  </li>
                ))}
              </ul>
            </>
          )}
          <p>
            <Link href="/units">Show all units</Link>
          </p>
        </EmptyState>
      )}
      <ListPages page={page} pages={Math.ceil(list.total / rowsOnPage)} hrefOf={to} />
    </Page>
  );
}

const columns: readonly Column<UnitListRow>[] = [
  { key: "serial", head: "Serial", cell: (row) => <Tag href={`/units/${row.unitId}`}>{row.serial}</Tag> },
  { key: "model", head: "Maker and model", cell: (row) => `${row.maker} ${row.model}` },
  { key: "type", head: "Appliance", wideOnly: true, cell: (row) => productTypes[row.productType] },
  {
    key: "service",
    head: "In service",
    wideOnly: true,
    cell: (row) => (row.inServiceOn === undefined ? "not known" : formatPlainDay(row.inServiceOn)),
  },
  {
    key: "retired",
    head: "Retired",
    wideOnly: true,
    cell: (row) => (row.retiredOn === undefined ? "–" : formatPlainDay(row.retiredOn)),
  },
  { key: "jobs", head: "Jobs", kind: "number", cell: (row) => row.jobs },
  {
    key: "last",
    head: "Last job",
    wideOnly: true,
    cell: (row) => (row.lastJobOn === undefined ? "none" : formatPlainDay(row.lastJobOn)),
  },
  {
    key: "register",
    head: "Counted",
    wideOnly: true,
    cell: (row) => (row.inRegister && row.inServiceOn !== undefined ? "yes" : "no exposure"),
  },
];

function Basis() {
  return (
    <>
      <p>
        Every unit of the register, and those known only from a job. The latter are known because they had trouble, so
        they carry no exposure.
      </p>
      <p>A unit without a day of service carries none either.</p>
    </>
  );
}
