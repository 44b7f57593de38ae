import { OpenAtFirst } from "@/app/_ui/open-at-first";
import { SelectField } from "@/app/_ui/select-field";
import type { RemittanceFull } from "@/db/queries/money-remittances";
import type { WordingVersion } from "@/db/queries/payer-wordings";
import { refusalReasonKeys, refusalReasons } from "@/lib/claims/life/refusal-reason";
import { payerWords } from "@/lib/claims/remittance/payer-words";
import { ListForm } from "./list-form";

const choices = refusalReasonKeys.map((value) => ({ value, name: refusalReasons[value] }));

interface Props {
  readonly list: RemittanceFull;
  readonly versionsOf: (payerText: string) => readonly WordingVersion[];
}

/** The payer's words of a list, each with what it means in our list of reasons; it can be said otherwise at any time. */
export function WordingForms({ list, versionsOf }: Props) {
  const said = list.rows.filter(({ fate, payerText }) => fate !== "undone" && payerText !== "");
  const words = [...new Map(said.map((line) => [payerWords(line.payerText), line])).values()];
  if (words.length === 0 || list.undoneBy !== undefined) return null;
  const unnamed = words.filter(({ payerText }) => versionsOf(payerText).length === 0).length;
  return (
    <OpenAtFirst
      open={unnamed > 0}
      summary={`The payer’s words and our reasons: ${words.length}, ${unnamed === 0 ? "all of them named" : `${unnamed} not named yet`}`}
    >
      <p className="small">
        What is said holds from now on, for every list of this payer and in the count of its reasons. What was posted
        keeps the reason it was posted with.
      </p>
      <ul className="stack">
        {words.map(({ row, payerText }) => (
          <li key={row}>
            <ListForm
              does="reason"
              list={list.remittanceId}
              button="Remember"
              weight="plain"
              hidden={{ words: payerText }}
            >
              <SelectField
                label={`“${payerText}” means`}
                name={`reason ${row}`}
                none="Not said"
                value={versionsOf(payerText)[0]?.reason}
                choices={choices}
              />
            </ListForm>
            <Versions versions={versionsOf(payerText)} />
          </li>
        ))}
      </ul>
    </OpenAtFirst>
  );
}

function Versions({ versions }: { readonly versions: readonly WordingVersion[] }) {
  const [last, ...before] = versions;
  if (last === undefined) return null;
  const told = before.map(({ reason, setBy }) => `${refusalReasons[reason]} (${setBy})`);
  return (
    <p className="small">
      Said by {last.setBy}, version {last.version}.{told.length > 0 && ` Before: ${told.join("; ")}.`}
    </p>
  );
}
