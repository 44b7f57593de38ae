import { Field } from "@/app/_ui/field";
import { SelectField } from "@/app/_ui/select-field";
import type { Catalogue } from "@/lib/intake/intake-setting";
import { knownWords } from "@/lib/intake/matching/known-words";
import type { Matching } from "@/lib/intake/matching/matching";
import { type TargetField, targetFields } from "@/lib/intake/matching/target-fields";
import { fieldName } from "../../../_components/field-name";

interface Props {
  readonly matching: Matching;
  readonly catalogue: Catalogue;
}

/** What a file often leaves out because it is the same throughout, such as the export of a shop for one kind of appliance. */
const oftenTheSame: ReadonlySet<string> = new Set(["product_type", "payer", "currency"]);

/** One value for every row, for columns that the file does not have: those that every row needs, and those often left out. */
export function ConstantFields({ matching, catalogue }: Props) {
  const matched = new Set(matching.columns.map(({ target }) => target));
  const lacking = targetFields(matching.kind).filter(
    ({ target, needed }) =>
      !matched.has(target) && (needed || oftenTheSame.has(target) || matching.constants[target] !== undefined),
  );
  if (lacking.length === 0) return null;
  return (
    <section className="stack-tight">
      <h2>The same for every row</h2>
      <p>No column is matched to these. Match one above, or give one value for all rows.</p>
      {lacking.map((field) => (
        <Constant key={field.target} field={field} value={matching.constants[field.target]} catalogue={catalogue} />
      ))}
    </section>
  );
}

interface ConstantProps {
  readonly field: TargetField;
  readonly value: string | undefined;
  readonly catalogue: Catalogue;
}

function Constant({ field, value, catalogue }: ConstantProps) {
  const known = knownWords(field, catalogue);
  const shared = {
    label: `${fieldName(field.target)}${field.needed ? " (every row needs it)" : ""}`,
    name: `constant:${field.target}`,
    hint: field.description,
    value,
  };
  if (known === undefined) return <Field {...shared} />;
  return (
    <SelectField {...shared} none="Not given" choices={[...known.names].map(([key, name]) => ({ value: key, name }))} />
  );
}
