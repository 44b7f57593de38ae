import { Button } from "@/app/_ui/button";
import type { PolicyDraft } from "@/db/queries/policy-versions";
import { publishDraft } from "../actions";

interface Props {
  readonly draft: PolicyDraft;
  readonly approvedBy: string;
}

export function PublishForm({ draft, approvedBy }: Props) {
  return (
    <form action={publishDraft} className="stack-tight">
      <p>Approved by {approvedBy}. Once published it cannot be edited or taken back; a later version can follow it.</p>
      <input type="hidden" name="draft" value={draft.draftId} />
      <input type="hidden" name="revision" value={draft.revision} />
      <Button>Publish</Button>
    </form>
  );
}
