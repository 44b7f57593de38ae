import { SelectField } from "@/app/_ui/select-field";
import { type Column, Table } from "@/app/_ui/table";
import type { RemittanceFull } from "@/db/queries/money-remittances";
import { remittanceFieldKeys, remittanceFields } from "@/lib/intake/remittances/remittance-columns";
import { ListForm } from "./list-form";

interface ColumnRow {
  readonly place: number;
  readonly heading: string;
  readonly field: string | undefined;
  readonly reason: string;
}

const choices = remittanceFieldKeys.map((value) => ({ value, name: remittanceFields[value] }));

/** What each column holds, as it was guessed and why; nothing is read before somebody has said yes. */
export function ColumnsForm({ list: { remittanceId, header, columns } }: { readonly list: RemittanceFull }) {
  const rows = header.map(
    (heading, place): ColumnRow => ({
      place,
      heading: heading === "" ? `Column ${place + 1}` : heading,
      field: columns.fields[place] ?? undefined,
      reason: columns.reasons[place] ?? "",
    }),
  );
  return (
    <ListForm does="columns" list={remittanceId} button="Read the lines">
      <Table caption="Columns of the list" columns={tableColumns} rows={rows} rowKey={({ place }) => String(place)} />
      <div className="cluster">
        <SelectField
          label="Decimal mark"
          name="decimalMark"
          value={columns.decimalMark}
          choices={[
            { value: ".", name: "Point: 1,234.50" },
            { value: ",", name: "Comma: 1.234,50" },
          ]}
        />
        <SelectField
          label="Days are written"
          name="dateOrder"
          value={columns.dateOrder}
          choices={["year first", "month first", "day first"].map((value) => ({ value, name: value }))}
        />
      </div>
    </ListForm>
  );
}

const tableColumns: readonly Column<ColumnRow>[] = [
  { key: "heading", head: "Heading", cell: ({ heading }) => heading },
  {
    key: "field",
    head: "Holds",
    cell: ({ place, field, heading }) => (
      <SelectField
        label={`What “${heading}” holds`}
        name={`column ${place}`}
        none="Not used"
        value={field}
        choices={choices}
      />
    ),
  },
  { key: "why", head: "Why", wideOnly: true, cell: ({ reason }) => <span className="small">{reason}</span> },
];
