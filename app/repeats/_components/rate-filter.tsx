import { FilterForm } from "@/app/_ui/filter-form";
import { SelectField } from "@/app/_ui/select-field";
import type { CatalogueWords } from "@/db/queries/known-words";
import { dayFromNumber } from "@/lib/calendar/day-number";
import { causes } from "@/lib/domain/cause";
import { productTypes } from "@/lib/domain/product-type";
import { ageBands, dimensions, type RateQuestion } from "@/lib/failures/rate-question";
import { countingName, dimensionNames } from "../rate-wording";
import type { RateOrder } from "../read-rate-question";
import { KindOfUnitFields } from "./kind-of-unit-fields";
import { SpanFields } from "./span-fields";

interface Props {
  readonly question: RateQuestion;
  readonly order: RateOrder;
  readonly words: CatalogueWords;
}

const groupings = dimensions.map((dimension) => ({ value: dimension, name: dimensionNames[dimension] }));
const countings = [
  { value: "failures", name: countingName("failures") },
  { value: "calls", name: countingName("calls") },
  ...Object.entries(causes)
    .filter(([key]) => key !== "component")
    .map(([value, cause]) => ({ value, name: cause.name })),
];
const keyed = (items: readonly { readonly key: string; readonly name: string }[]) =>
  items.map(({ key, name }) => ({ value: key, name }));

/** Every choice of the question; sent by GET, so that the address is the saved view. */
export function RateFilter({ question, order, words }: Props) {
  const { where } = question;
  return (
    <FilterForm action="/repeats" words={filterWords(question)} clearHref="/repeats">
      <SelectField label="Group by" name="by" choices={groupings} value={question.by[0]} />
      <SelectField label="and by" name="and" none="Nothing else" choices={groupings} value={question.by[1]} />
      <SelectField label="Count" name="count" choices={countings} value={question.counting} />
      <KindOfUnitFields words={words} where={where} />
      <SelectField
        label="Component"
        name="component"
        none="Any"
        choices={keyed(words.components)}
        value={where.component}
      />
      <SelectField label="Symptom" name="symptom" none="Any" choices={keyed(words.symptoms)} value={where.symptom} />
      <SelectField label="Age" name="age" none="Any" choices={keyed(ageBands)} value={where.age} />
      <SpanFields question={question} cutOff={words.cutOff} />
      <SelectField
        label="In order of"
        name="order"
        choices={[
          { value: "lowest", name: "Lowest believable rate" },
          { value: "name", name: "Name" },
        ]}
        value={order}
      />
    </FilterForm>
  );
}

function filterWords(question: RateQuestion): string {
  const { where } = question;
  const narrowed = [
    where.maker,
    where.model,
    where.productType && productTypes[where.productType],
    where.component?.replaceAll("_", " "),
    where.symptom?.replaceAll("_", " "),
    ageBands.find((band) => band.key === where.age)?.name,
  ]
    .filter((word) => word !== undefined)
    .join(", ");
  const by = question.by.map((dimension) => dimensionNames[dimension].toLowerCase()).join(" and ");
  const span = question.from === undefined ? "" : `, from ${dayFromNumber(question.from)}`;
  return `${countingName(question.counting)} by ${by} — ${narrowed === "" ? "all units" : narrowed}${span}`;
}
