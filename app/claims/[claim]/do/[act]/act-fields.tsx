import type { ReactNode } from "react";
import type { ActSlug } from "@/app/_claims/act-forms";
import { Field } from "@/app/_ui/field";
import { SelectField } from "@/app/_ui/select-field";
import type { Day } from "@/lib/calendar/day";
import type { ClaimStanding } from "@/lib/claims/life/claim-standing";
import { refusalReasonKeys, refusalReasons } from "@/lib/claims/life/refusal-reason";
import { sendingWayKeys, sendingWays } from "@/lib/claims/life/sending-way";
import { LineAmounts } from "./line-amounts";

interface Props {
  readonly slug: ActSlug;
  readonly standing: ClaimStanding;
  readonly today: Day;
}

/** What each act is told with. */
export function ActFields({ slug, standing, today }: Props): ReactNode {
  const on = <Field label="Day" name="on" type="date" width="short" value={today} />;
  switch (slug) {
    case "sent":
      return (
        <>
          <Field label="Day of sending" name="on" type="date" width="short" value={today} />
          <SelectField
            label="Sent by"
            name="way"
            choices={sendingWayKeys.map((key) => ({ value: key, name: sendingWays[key] }))}
          />
          <Field label="Reference" name="reference" hint="Upload or tracking number, if there is one." />
        </>
      );
    case "received":
      return (
        <>
          {on}
          <Field label="The payer’s own number" name="reference" hint="Finds this claim on its lists of payments." />
        </>
      );
    case "answered":
      return <AnswerFields standing={standing} on={on} />;
    case "paid":
      return (
        <>
          {on}
          <Field label="Reference of the payment" name="reference" hint="Payment, remittance or credit note number." />
          <LineAmounts caption="What was paid now" standing={standing} value={openOf} />
        </>
      );
    case "clawed-back":
      return (
        <>
          {on}
          <Field label="Reference of the letter" name="reference" />
          <Reasons />
          <PayerText />
          <LineAmounts caption="What is taken back" standing={standing} value={(line) => line.paidCents} />
        </>
      );
    case "audit-opened":
      return (
        <>
          {on}
          <Field label="Reference of the audit letter" name="reference" />
        </>
      );
    case "audit-upheld":
      return on;
    case "appealed":
      return (
        <>
          {on}
          <Field label="What the appeal rests on" name="why" type="textarea" />
        </>
      );
    case "written-off":
      return (
        <>
          {on}
          <Field label="Why it is written off" name="why" type="textarea" />
        </>
      );
    case "withdrawn":
      return <Field label="Why it is withdrawn" name="why" type="textarea" />;
  }
}

function AnswerFields({ standing, on }: { readonly standing: ClaimStanding; readonly on: ReactNode }) {
  return (
    <>
      {on}
      <SelectField
        label="The payer’s answer"
        name="kind"
        none="Choose"
        choices={[
          { value: "approved", name: "Approved, in full or in part" },
          { value: "needs correction", name: "Sent back to be corrected" },
          { value: "rejected", name: "Rejected" },
        ]}
      />
      <LineAmounts
        caption="What was approved, where it was"
        standing={standing}
        value={(line) => line.approvedCents ?? line.askedCents}
      />
      <PayerText />
      <Reasons />
    </>
  );
}

function PayerText() {
  return (
    <Field
      label="The payer’s own words"
      name="payerText"
      type="textarea"
      hint="As they came: no two payers word a rejection alike, and an appeal quotes them."
    />
  );
}

function Reasons() {
  return (
    <SelectField
      label="Our reason"
      name="why-reason"
      none="Nothing was refused"
      hint="What comes nearest to the payer’s words, so that reasons can be counted."
      choices={refusalReasonKeys.map((key) => ({ value: key, name: refusalReasons[key] }))}
    />
  );
}

/** What the payer approved and has not paid yet; where it has paid that, or said nothing, what is still open of what was asked. */
function openOf({ approvedCents, askedCents, paidCents }: ClaimStanding["lines"][number]): number {
  const due = approvedCents !== undefined && paidCents < approvedCents ? approvedCents : askedCents;
  return Math.max(0, due - paidCents);
}
