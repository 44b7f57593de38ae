import { SelectField } from "@/app/_ui/select-field";
import type { RemittanceFull } from "@/db/queries/money-remittances";
import { refusalReasonKeys, refusalReasons } from "@/lib/claims/life/refusal-reason";
import { payerWords } from "@/lib/claims/remittance/payer-words";
import { ListForm } from "./list-form";

const choices = refusalReasonKeys.map((value) => ({ value, name: refusalReasons[value] }));

/** The payer's words of lines that are not posted, each with what it means in our list of reasons. */
export function WordingForms({ list }: { readonly list: RemittanceFull }) {
  const open = list.rows.filter(({ fate, payerText }) => fate !== "posted" && fate !== "undone" && payerText !== "");
  const words = [...new Map(open.map((line) => [payerWords(line.payerText), line])).values()];
  if (words.length === 0 || list.undoneBy !== undefined) return null;
  const unnamed = words.filter(({ reason }) => reason === undefined).length;
  return (
    <details open={unnamed > 0}>
      <summary>
        The payer’s words and our reasons: {words.length},{" "}
        {unnamed === 0 ? "all of them named" : `${unnamed} not named yet`}
      </summary>
      <ul className="stack">
        {words.map(({ row, payerText, reason }) => (
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
                value={reason}
                choices={choices}
              />
            </ListForm>
          </li>
        ))}
      </ul>
    </details>
  );
}
