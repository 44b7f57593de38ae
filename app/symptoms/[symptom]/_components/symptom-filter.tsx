import { FilterForm } from "@/app/_ui/filter-form";
import { SelectField } from "@/app/_ui/select-field";
import { productTypes } from "@/lib/domain/product-type";
import { symptomOf } from "@/lib/domain/symptoms";
import { ageBands } from "@/lib/sheets/sheet-basis";
import { type SymptomGroup, seasons } from "@/lib/sheets/symptom-shares";
import type { SymptomAddress } from "../read-symptom-address";

interface Props {
  readonly symptom: string;
  readonly address: SymptomAddress;
  readonly groups: readonly SymptomGroup[];
  readonly words: string;
}

export function SymptomFilter({ symptom, address, groups, words }: Props) {
  const same = (values: readonly string[]) => values.map((value) => ({ value, name: value }));
  const models = [...new Set(groups.map(({ model }) => model))].sort();
  const types = symptomOf(symptom)?.productTypes ?? [];
  return (
    <FilterForm
      action={`/symptoms/${symptom}`}
      words={words}
      clearHref={`/symptoms/${symptom}?type=${address.productType}`}
    >
      <SelectField
        label="Kind of appliance"
        name="type"
        value={address.productType}
        choices={types.map((type) => ({ value: type, name: productTypes[type] }))}
      />
      <SelectField label="Model" name="model" none="All" value={address.model} choices={same(models)} />
      <SelectField label="Age" name="age" none="All" value={address.age} choices={same(ageBands)} />
      <SelectField label="Season" name="season" none="All" value={address.season} choices={same(seasons)} />
    </FilterForm>
  );
}
