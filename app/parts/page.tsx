import type { Metadata } from "next";
import { todayIn } from "@/app/_clock/today";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import { readOnly } from "@/db/client";
import { loadPartUse } from "@/db/queries/part-use";
import { loadShop } from "@/db/queries/shop";
import { type PartRow, partRows, partsFinding } from "./part-rows";

export const metadata: Metadata = { title: "Parts" };
export const dynamic = "force-dynamic";

export default async function PartsPage() {
  const { use, until } = await readOnly(async (db) => {
    const today = todayIn((await loadShop(db)).timeZone);
    return { use: await loadPartUse(db, today), until: today };
  });
  const rows = partRows(use, until);
  return (
    <Page title={partsFinding(rows)} margin={<Basis />} wide>
      {rows.length === 0 ? (
        <p>
          No parts have been used yet. They come with the part lines of closed jobs:{" "}
          <a href="/files/new">load a file</a>.
        </p>
      ) : (
        <Table
          caption="Parts by use in the last 12 whole months"
          columns={columns}
          rows={rows}
          rowKey={(row) => row.partNumber}
        />
      )}
    </Page>
  );
}

const columns: readonly Column<PartRow>[] = [
  { key: "part", head: "Part", cell: (row) => <Tag>{row.partNumber}</Tag> },
  { key: "name", head: "Name", cell: (row) => row.description },
  { key: "year", head: "Used in 12 months", kind: "number", cell: (row) => row.lastYear },
  { key: "month", head: "This month", cell: (row) => row.nextMonth },
  { key: "quarter", head: "This month and the next two", cell: (row) => row.nextQuarter },
  { key: "held", head: "Ranges that held", kind: "number", wideOnly: true, cell: (row) => row.held },
];

function Basis() {
  return (
    <>
      <p>
        Quantities fitted on closed jobs, by calendar month of completion. Ranges come from up to 24 whole months of a
        part’s own use and allow for both chance and the short history; they know nothing yet of ages in service or of
        new trouble.
      </p>
      <p>
        “Ranges that held” looks back: each month’s 9-in-10 range is made from the months before it only, and compared
        with what was used. Whole parts make ranges somewhat wide, so a little more than 9 in 10 should hold.
      </p>
      <p>A part with less than a year of use shows its count alone.</p>
    </>
  );
}
