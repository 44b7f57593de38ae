import { Field } from "@/app/_ui/field";
import { FilterForm } from "@/app/_ui/filter-form";
import { SelectField } from "@/app/_ui/select-field";
import { formatCounted } from "@/lib/format/format-count";
import type { PartRow } from "../parts-view";
import type { PartsAddress } from "../read-parts-address";

interface Props {
  readonly address: PartsAddress;
  readonly rows: readonly PartRow[];
  readonly shown: number;
}

const shows = [
  { value: "order", name: "To be ordered" },
  { value: "enough", name: "Enough" },
  { value: "not-counted", name: "Not counted" },
] as const;

export function PartsFilter({ address: { filter, inForce }, rows, shown }: Props) {
  const components = new Map(rows.map((row) => [row.component ?? "none", row.componentName ?? "No component on file"]));
  const words = [
    shows.find(({ value }) => value === filter.show)?.name ?? "All parts",
    filter.component === undefined ? undefined : (components.get(filter.component) ?? filter.component),
    filter.search === undefined ? undefined : `“${filter.search}”`,
  ].filter((word) => word !== undefined);
  return (
    <FilterForm
      action="/parts"
      words={`${words.join(", ")} — ${formatCounted(shown, "part")}`}
      clearHref={inForce.length > 0 ? "/parts" : undefined}
    >
      <Field label="Number or name" name="q" type="search" value={filter.search} />
      <SelectField
        label="Component"
        name="component"
        none="Any"
        value={filter.component}
        choices={[...components]
          .map(([value, name]) => ({ value, name }))
          .sort((a, b) => a.name.localeCompare(b.name, "en"))}
      />
      <SelectField label="Which" name="show" none="All" value={filter.show} choices={shows} />
    </FilterForm>
  );
}
