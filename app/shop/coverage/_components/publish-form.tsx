import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import type { PolicyDraft } from "@/db/queries/policy-versions";
import { publishDraft } from "../actions";

interface Props {
  readonly draft: PolicyDraft;
  readonly approvedBy: string;
  readonly problem: boolean;
}

export function PublishForm({ draft, approvedBy, problem }: Props) {
  return (
    <form action={publishDraft} className="stack-tight">
      <p>Approved by {approvedBy}. Once published it cannot be edited or taken back; a later version can follow it.</p>
      <input type="hidden" name="draft" value={draft.draftId} />
      <input type="hidden" name="revision" value={draft.revision} />
      <Field label="Your name" name="by" required problem={problem ? "Say who publishes it." : undefined} />
      <Button>Publish</Button>
    </form>
  );
}
