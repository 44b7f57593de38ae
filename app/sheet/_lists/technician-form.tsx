import { Button } from "@/app/_ui/button";
import { SelectField } from "@/app/_ui/select-field";

interface Props {
  readonly names: readonly string[];
  readonly chosen: string | undefined;
}

/** The name stays in the address, so that a phone's bookmark opens its owner's list. */
export function TechnicianForm({ names, chosen }: Props) {
  if (names.length === 0) return null;
  return (
    <form className="cluster no-print">
      <SelectField
        label="Technician"
        name="technician"
        value={chosen}
        none="Everybody"
        choices={names.map((name) => ({ value: name, name }))}
      />
      <Button weight="plain">Show</Button>
    </form>
  );
}
