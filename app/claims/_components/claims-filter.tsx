import { Field } from "@/app/_ui/field";
import { FilterForm } from "@/app/_ui/filter-form";
import { SelectField } from "@/app/_ui/select-field";
import { type ClaimsAddress, claimsHref } from "../read-claims-address";
import { tabNames } from "./claim-tabs";

interface Props {
  readonly address: ClaimsAddress;
  readonly payers: readonly string[];
  readonly shown: number;
}

export function ClaimsFilter({ address, payers, shown }: Props) {
  const { tab, payer, words, within, sort } = address;
  const isFiltered = payer !== undefined || words !== undefined || within !== undefined;
  const said = [
    tabNames[tab],
    ...(payer === undefined ? [] : [payer]),
    ...(within === undefined ? [] : [`to be done within ${within} days`]),
    ...(words === undefined ? [] : [`“${words}”`]),
  ];
  return (
    <FilterForm
      action="/claims"
      words={`${said.join(", ")} — ${shown}`}
      clearHref={isFiltered ? claimsHref({ tab, sort }) : undefined}
    >
      {tab !== "unclaimed" && <input type="hidden" name="list" value={tab} />}
      {sort !== undefined && <input type="hidden" name="sort" value={sort} />}
      <SelectField
        label="Payer"
        name="payer"
        none="Any"
        value={payer}
        choices={payers.map((name) => ({ value: name, name }))}
      />
      <Field label="Days left, at most" name="within" inputMode="numeric" width="short" value={within?.toString()} />
      {tab !== "unclaimed" && <Field label="Claim, job or serial" name="words" type="search" value={words} />}
    </FilterForm>
  );
}
