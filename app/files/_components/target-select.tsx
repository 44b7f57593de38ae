import fieldStyles from "@/app/_ui/field.module.css";
import type { TargetField } from "@/lib/intake/matching/target-fields";
import { fieldName } from "./field-name";

interface Props {
  readonly name: string;
  /** Said to screen readers: the row's head shows it to the others. */
  readonly label: string;
  readonly fields: readonly TargetField[];
  readonly value: string | undefined;
}

/** Which of our columns a column of the file is: those that every row needs first, then the rest, then the part line's. */
export function TargetSelect({ name, label, fields, value }: Props) {
  const own = fields.filter(({ target }) => !target.includes("."));
  const groups = [
    { title: "Needed by every row", fields: own.filter(({ needed }) => needed) },
    { title: "May be blank", fields: own.filter(({ needed }) => !needed) },
    { title: "Of the part line", fields: fields.filter(({ target }) => target.includes(".")) },
  ];
  return (
    <select
      id={`field-${name}`}
      name={name}
      aria-label={label}
      defaultValue={value ?? ""}
      className={fieldStyles.input}
    >
      <option value="">Not used, kept in the raw row</option>
      {groups
        .filter((group) => group.fields.length > 0)
        .map((group) => (
          <optgroup key={group.title} label={group.title}>
            {group.fields.map(({ target }) => (
              <option key={target} value={target}>
                {fieldName(target)}
              </option>
            ))}
          </optgroup>
        ))}
    </select>
  );
}
