import { SelectField } from "@/app/_ui/select-field";
import type { CatalogueWords } from "@/db/queries/known-words";
import type { Day } from "@/lib/calendar/day";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { KindOfUnitFields } from "../../_components/kind-of-unit-fields";
import { SpanFields } from "../../_components/span-fields";

interface Props {
  readonly question: LifeQuestion;
  readonly words: CatalogueWords;
  readonly cutOff: Day;
}

/** What narrows the units and the days, in the names that the address uses. */
export function LifeFilterFields({ question, words, cutOff }: Props) {
  const { where } = question;
  return (
    <>
      <KindOfUnitFields words={words} where={where} />
      <SelectField
        label="Symptom"
        name="symptom"
        none="Any"
        choices={words.symptoms.map(({ key, name }) => ({ value: key, name }))}
        value={where.symptom}
      />
      <SpanFields question={question} cutOff={cutOff} />
    </>
  );
}
