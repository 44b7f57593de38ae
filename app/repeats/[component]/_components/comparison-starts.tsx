import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Plate } from "@/app/_ui/plate";
import { lifeQuery } from "../../life-address";
import type { DrawnLife } from "../../load-component-life";
import { AgainstField } from "./against-field";

/** From this view to a comparison with another group, or with itself before and after a day. */
export function ComparisonStarts({ view }: { readonly view: DrawnLife }) {
  const { question, words, cutOff } = view;
  const kept = [...new URLSearchParams(lifeQuery(question, cutOff))];
  const hidden = kept.map(([name, value]) => <input key={name} type="hidden" name={name} value={value} />);
  const base = `/repeats/${question.component}`;
  return (
    <div className="no-print">
      <Plate title="Compare">
        <form action={`${base}/compare`} method="get" className="cluster">
          {hidden}
          <AgainstField words={words} component={question.component} />
          <Button>Compare these two</Button>
        </form>
        <form action={`${base}/before-after`} method="get" className="cluster">
          {hidden}
          <Field label="Before and after a day, such as that of a changed part" name="on" type="date" />
          <Button>Compare before with after</Button>
        </form>
      </Plate>
    </div>
  );
}
