import { Field } from "@/app/_ui/field";
import { SelectField } from "@/app/_ui/select-field";
import type { CatalogueWords } from "@/db/queries/known-words";
import { addDays, type Day } from "@/lib/calendar/day";
import { dayFromNumber, dayNumber } from "@/lib/calendar/day-number";
import { productTypeKeys, productTypes } from "@/lib/domain/product-type";
import type { LifeQuestion } from "@/lib/failures/visit-spells";

interface Props {
  readonly question: LifeQuestion;
  readonly words: CatalogueWords;
  readonly cutOff: Day;
}

/** What narrows the units and the days, in the names that the address uses. */
export function LifeFilterFields({ question, words, cutOff }: Props) {
  const { where, from, until, level } = question;
  return (
    <>
      <SelectField
        label="Maker"
        name="make"
        none="Any"
        choices={words.makers.map((name) => ({ value: name, name }))}
        value={where.maker}
      />
      <SelectField
        label="Model"
        name="model"
        none="Any"
        choices={words.models.map((model) => ({ value: model.number, name: `${model.maker} ${model.number}` }))}
        value={where.model}
      />
      <SelectField
        label="Appliance"
        name="type"
        none="Any"
        choices={productTypeKeys.map((value) => ({ value, name: productTypes[value] }))}
        value={where.productType}
      />
      <SelectField
        label="Symptom"
        name="symptom"
        none="Any"
        choices={words.symptoms.map(({ key, name }) => ({ value: key, name }))}
        value={where.symptom}
      />
      <Field label="From" name="from" type="date" value={from === undefined ? undefined : dayFromNumber(from)} />
      <Field
        label="To"
        name="to"
        type="date"
        value={until === dayNumber(cutOff) ? undefined : addDays(dayFromNumber(until), -1)}
      />
      <SelectField
        label="Ranges hold"
        name="level"
        choices={["90", "95", "99"].map((value) => ({ value, name: `${value} times in 100` }))}
        value={String(Math.round(100 * level))}
      />
    </>
  );
}
