import { Plate } from "@/app/_ui/plate";
import type { Policy } from "@/lib/domain/policy";
import { payWords } from "../pay-words";
import { policyWords } from "../policy-words";

/** What a policy says beside its table of terms, in sentences. */
export function SentencePlates({ policy }: { readonly policy: Policy }) {
  return [...policyWords(policy), ...payWords(policy)].map(({ title, sentences }) => (
    <Plate key={title} title={title}>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </Plate>
  ));
}
