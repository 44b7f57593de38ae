// What is held against a claim before it is filed, in the order in which payers most often refuse. The order is the
// judgement of the trade handbook from public lists of rejection reasons; it is common practice, no source.
import { authorizationChecked } from "./checks/authorization";
import { clockChecked } from "./checks/clock";
import { codesChecked } from "./checks/codes";
import { documentsChecked } from "./checks/documents";
import type { FilingCase, FilingCheck } from "./checks/filing-case";
import { partInvoiceChecked } from "./checks/part-invoice";
import { purchaseDateChecked } from "./checks/purchase-date";
import { repeatChecked } from "./checks/repeat";
import { requiredFieldsChecked } from "./checks/required-fields";
import { serialChecked } from "./checks/serial";
import { termChecked } from "./checks/term";
import { wordingChecked } from "./checks/wording";

/**
 * Every check with what was found and what would mend it. A failed one stops the sending unless somebody says why it
 * is sent all the same; one that can't be told says what is missing and stops nothing.
 * Checked: tests/claims/filing-checks.test.ts.
 */
export function filingChecks(given: FilingCase): readonly FilingCheck[] {
  return [
    partInvoiceChecked(given),
    purchaseDateChecked(given),
    serialChecked(given),
    termChecked(given),
    repeatChecked(given),
    clockChecked(given),
    codesChecked(given),
    authorizationChecked(given),
    wordingChecked(given),
    requiredFieldsChecked(given),
    documentsChecked(given),
  ];
}
