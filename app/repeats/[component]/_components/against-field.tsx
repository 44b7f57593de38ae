import { SelectField } from "@/app/_ui/select-field";
import type { CatalogueWords } from "@/db/queries/known-words";

interface Props {
  readonly words: CatalogueWords;
  /** The component of the first group. */
  readonly component: string;
  readonly value?: string | undefined;
}

/** What a group can be set against: the rest, a maker, a model, another component. */
export function AgainstField({ words, component, value }: Props) {
  const choices = [
    { value: "rest", name: "The rest of the fleet" },
    ...words.makers.map((maker) => ({ value: `make:${maker}`, name: `Maker ${maker}` })),
    ...words.models.map(({ maker, number }) => ({ value: `model:${number}`, name: `Model ${maker} ${number}` })),
    ...words.components
      .filter(({ key }) => key !== component)
      .map(({ key, name }) => ({ value: `component:${key}`, name: `Component ${name.toLowerCase()}` })),
  ];
  return <SelectField label="Against" name="with" choices={choices} value={value ?? "rest"} />;
}
