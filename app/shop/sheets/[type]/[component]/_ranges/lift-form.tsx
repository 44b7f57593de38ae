import { Button } from "@/app/_ui/button";
import { liftRange } from "./actions";

interface Props {
  readonly rangeId: number;
  readonly path: string;
  readonly name: string;
}

/** From then on what a file says holds again. */
export function LiftForm({ rangeId, path, name }: Props) {
  return (
    <form action={liftRange} className="cluster">
      <input type="hidden" name="range" value={rangeId} />
      <input type="hidden" name="path" value={path} />
      <Button weight="plain">
        Lift<span className="only-heard"> the range of {name}</span>
      </Button>
    </form>
  );
}
