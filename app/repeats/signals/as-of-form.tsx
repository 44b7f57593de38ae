import { Field } from "@/app/_ui/field";
import { FilterForm } from "@/app/_ui/filter-form";
import type { Day } from "@/lib/calendar/day";
import { formatDay } from "@/lib/format/format-day";

/** Shows the list as it stood on an earlier day. */
export function AsOfForm({ asOf }: { readonly asOf: Day | undefined }) {
  return (
    <FilterForm
      action="/repeats"
      words={asOf === undefined ? "As of now — show an earlier day" : `As it stood on ${formatDay(asOf)}`}
      clearHref={asOf === undefined ? undefined : "/repeats"}
      submit="Show that day"
    >
      <Field
        label="Day"
        name="as"
        type="date"
        value={asOf}
        hint="Only jobs closed by the end of the week before it are counted."
      />
    </FilterForm>
  );
}
