import { Field } from "@/app/_ui/field";
import { SelectField } from "@/app/_ui/select-field";
import { addDays, type Day } from "@/lib/calendar/day";
import { dayFromNumber, dayNumber } from "@/lib/calendar/day-number";
import type { RateQuestion } from "@/lib/failures/rate-question";

interface Props {
  readonly question: Pick<RateQuestion, "from" | "until" | "level">;
  /** The day with which records end: asked up to there, the field stays empty. */
  readonly cutOff: Day | undefined;
}

/** Which days are asked about and how sure a range is, in the names that the address uses. */
export function SpanFields({ question: { from, until, level }, cutOff }: Props) {
  const isToTheEnd = cutOff !== undefined && until === dayNumber(cutOff);
  return (
    <>
      <Field label="From" name="from" type="date" value={from === undefined ? undefined : dayFromNumber(from)} />
      <Field label="To" name="to" type="date" value={isToTheEnd ? undefined : addDays(dayFromNumber(until), -1)} />
      <SelectField
        label="Ranges hold"
        name="level"
        choices={["90", "95", "99"].map((value) => ({ value, name: `${value} times in 100` }))}
        value={String(Math.round(100 * level))}
      />
    </>
  );
}
