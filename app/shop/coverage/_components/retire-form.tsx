import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { retireVersion } from "../actions";

interface Props {
  readonly policyKey: string;
  readonly version: number;
  /** The form came back without a reason. */
  readonly problem: boolean;
}

export function RetireForm({ policyKey, version, problem }: Props) {
  return (
    <form action={retireVersion} id="retire" className="stack-tight">
      <p>
        A retired version decides nothing any more. Units sold on its days fall under the version that it closed; where
        there is none they have no policy. Claims that it decided keep it. This cannot be taken back.
      </p>
      <input type="hidden" name="key" value={policyKey} />
      <input type="hidden" name="version" value={version} />
      <Field label="Why" name="reason" required problem={problem ? "Give the reason." : undefined} />
      <Button weight="plain">Retire version {version}</Button>
    </form>
  );
}
