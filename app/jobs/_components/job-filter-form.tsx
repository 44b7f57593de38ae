import { Field } from "@/app/_ui/field";
import { FilterForm } from "@/app/_ui/filter-form";
import { SelectField } from "@/app/_ui/select-field";
import type { FilterWords } from "@/db/queries/known-words";
import { causeKeys, causes } from "@/lib/domain/cause";
import { productTypeKeys, productTypes } from "@/lib/domain/product-type";
import { ageBands } from "@/lib/failures/rate-question";
import type { JobAddress } from "../read-job-filter";

interface Props {
  readonly address: JobAddress;
  readonly words: FilterWords;
}

const filterNames: Readonly<Record<string, string>> = {
  make: "maker",
  tech: "technician",
  count: "counted as",
  words: "with the words",
};
const keyed = (items: readonly { readonly key: string; readonly name: string }[]) =>
  items.map(({ key, name }) => ({ value: key, name }));

export function JobFilterForm({ address: { inForce }, words }: Props) {
  const value = (name: string) => inForce.find((entry) => entry.name === name)?.value;
  const inWords = inForce
    .map((entry) => `${filterNames[entry.name] ?? entry.name} ${entry.value.replaceAll("_", " ")}`)
    .join(", ");
  return (
    <FilterForm
      action="/jobs"
      words={inWords === "" ? "All jobs" : inWords}
      clearHref={inWords === "" ? undefined : "/jobs"}
    >
      <Field
        label="Words"
        name="words"
        type="search"
        value={value("words")}
        hint="In number, serial, complaint, cause or correction"
      />
      <SelectField
        label="Maker"
        name="make"
        none="Any"
        choices={words.makers.map((name) => ({ value: name, name }))}
        value={value("make")}
      />
      <SelectField
        label="Model"
        name="model"
        none="Any"
        choices={words.models.map((model) => ({ value: model.number, name: `${model.maker} ${model.number}` }))}
        value={value("model")}
      />
      <SelectField
        label="Appliance"
        name="type"
        none="Any"
        choices={productTypeKeys.map((key) => ({ value: key, name: productTypes[key] }))}
        value={value("type")}
      />
      <SelectField
        label="Component"
        name="component"
        none="Any"
        choices={keyed(words.components)}
        value={value("component")}
      />
      <SelectField label="Symptom" name="symptom" none="Any" choices={keyed(words.symptoms)} value={value("symptom")} />
      <SelectField
        label="Cause"
        name="cause"
        none="Any"
        choices={causeKeys.map((key) => ({ value: key, name: causes[key].name }))}
        value={value("cause")}
      />
      <SelectField label="Age at failure" name="age" none="Any" choices={keyed(ageBands)} value={value("age")} />
      <SelectField
        label="Counted in rates as"
        name="count"
        none="Counted or not"
        choices={[
          { value: "failures", name: "Failures" },
          { value: "calls", name: "All closed jobs" },
        ]}
        value={value("count")}
      />
      <Field label="Failed from" name="from" type="date" value={value("from")} />
      <Field label="Failed up to" name="to" type="date" value={value("to")} />
    </FilterForm>
  );
}
