import { Field } from "@/app/_ui/field";
import { FilterForm } from "@/app/_ui/filter-form";
import { SelectField } from "@/app/_ui/select-field";
import type { UnclaimedFacts } from "@/db/queries/money-unclaimed";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { leakClasses, leakName, type UnclaimedAddress } from "../read-unclaimed-address";

interface Props {
  readonly address: UnclaimedAddress;
  readonly facts: UnclaimedFacts;
  readonly total: number;
}

export function UnclaimedFilterForm({ address: { filter, inForce }, facts, total }: Props) {
  const named = (values: readonly string[]) => values.map((value) => ({ value, name: value.replaceAll("_", " ") }));
  return (
    <FilterForm
      action="/claims/unclaimed"
      words={`${inWords(filter)} — ${formatCounted(total, "case")}`}
      clearHref={inForce.length > 0 ? "/claims/unclaimed" : undefined}
    >
      <SelectField
        label="How it was missed"
        name="class"
        none="Any"
        value={filter.leak}
        choices={leakClasses.map((leak) => ({ value: leak, name: leakName(leak) }))}
      />
      <SelectField label="Payer" name="payer" none="Any" value={filter.payer} choices={named(facts.payers)} />
      <SelectField
        label="Component"
        name="component"
        none="Any"
        value={filter.component}
        choices={named(facts.components)}
      />
      <Field
        label="Days left, at most"
        name="within"
        inputMode="numeric"
        width="short"
        value={filter.within?.toString()}
      />
      <Field label="Completed from" name="from" type="date" width="short" value={filter.from} />
      <Field label="Completed to" name="to" type="date" width="short" value={filter.to} />
    </FilterForm>
  );
}

function inWords({ leak, payer, component, within, from, to }: UnclaimedAddress["filter"]): string {
  const words = [
    leak === undefined ? "All covered work without its pay" : leakName(leak),
    payer,
    component?.replaceAll("_", " "),
    within === undefined ? undefined : `${within} days left at most`,
    from && `completed from ${formatPlainDay(from)}`,
    to && `completed to ${formatPlainDay(to)}`,
  ];
  return words.filter((word) => word !== undefined).join(", ");
}
