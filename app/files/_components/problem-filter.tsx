import { FilterForm } from "@/app/_ui/filter-form";
import { SelectField } from "@/app/_ui/select-field";
import { formatCounted } from "@/lib/format/format-count";
import { kindKey, type ProblemKind } from "./alike-problems";

interface Props {
  readonly action: string;
  readonly kinds: readonly ProblemKind[];
  readonly chosen: string | undefined;
}

/** One kind of problem at a time; left out where there is only one. */
export function ProblemFilter({ action, kinds, chosen }: Props) {
  if (kinds.length < 2) return null;
  const found = kinds.find((kind) => kindKey(kind) === chosen);
  return (
    <FilterForm
      action={action}
      words={found === undefined ? `All ${kinds.length} kinds of problem` : kindWords(found)}
      clearHref={found === undefined ? undefined : action}
    >
      <SelectField
        label="Problem"
        name="problem"
        value={chosen}
        none="All"
        choices={kinds.map((kind) => ({ value: kindKey(kind), name: kindWords(kind) }))}
      />
    </FilterForm>
  );
}

function kindWords({ column, problem, rows }: ProblemKind): string {
  return `${column === "" ? "The whole row" : column} ${problem}: ${formatCounted(rows, "row")}`;
}
