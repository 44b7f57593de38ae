import { Field } from "@/app/_ui/field";
import { SelectField } from "@/app/_ui/select-field";
import type { OrderLine } from "@/db/queries/part-orders";
import type { Day } from "@/lib/calendar/day";
import { plainAmount } from "@/lib/format/plain-amount";
import { OnceForm } from "../../_components/once-form";
import { actOnOrder } from "../actions";

interface Props {
  readonly line: OrderLine;
  readonly today: Day;
  readonly formKey: string;
}

function Envelope({ line, act }: { readonly line: OrderLine; readonly act: string }) {
  return (
    <>
      <input type="hidden" name="order" value={line.orderId} />
      <input type="hidden" name="version" value={line.version} />
      <input type="hidden" name="act" value={act} />
    </>
  );
}

const back = "/parts/orders";

/** What came, whole or in part. */
export function ReceiveForm({
  line,
  today,
  formKey,
  technicians,
}: Props & { readonly technicians: readonly string[] }) {
  const places = [
    { value: "", name: "Shelf" },
    ...technicians.map((name) => ({ value: name, name: `${name}’s truck` })),
  ];
  return (
    <section className="stack-tight">
      <h2>It came</h2>
      <OnceForm action={actOnOrder} formKey={formKey} submit="Receive" back={back}>
        <Envelope line={line} act="received" />
        <Field
          label="Pieces that came"
          name="pieces"
          inputMode="numeric"
          width="short"
          value={String(line.quantity - line.received)}
        />
        <Field label="Came on" name="on" width="short" value={today} />
        <SelectField label="To" name="place" choices={places} value="" />
      </OnceForm>
    </section>
  );
}

export function OrderedForm({ line, today, formKey }: Props) {
  return (
    <section className="stack-tight">
      <h2>It was ordered</h2>
      <OnceForm action={actOnOrder} formKey={formKey} submit="Mark as ordered" back={back}>
        <Envelope line={line} act="ordered" />
        <Field label="Ordered on" name="on" width="short" value={today} />
        <Field label="Due" name="expectedOn" width="short" hint="As the supplier states it; may stay empty." />
      </OnceForm>
    </section>
  );
}

export function ChangeForm({ line, formKey }: Props) {
  return (
    <details>
      <summary>Change it</summary>
      <OnceForm action={actOnOrder} formKey={formKey} submit="Keep the change" back={back}>
        <Envelope line={line} act="changed" />
        <Field label="Pieces" name="quantity" inputMode="numeric" width="short" value={String(line.quantity)} />
        <Field label="Supplier" name="supplier" value={line.supplier} />
        <Field
          label="Cost of one"
          name="unitCost"
          inputMode="decimal"
          width="short"
          unit={line.currency}
          value={line.unitCostCents === undefined ? "" : plainAmount(line.unitCostCents)}
        />
        {line.state === "ordered" && <Field label="Due" name="expectedOn" width="short" value={line.expectedOn} />}
        <Field label="Note" name="note" value={line.note} />
      </OnceForm>
    </details>
  );
}

export function PlainActForm({
  line,
  formKey,
  act,
  submit,
}: Props & { readonly act: "cancelled" | "reopened"; readonly submit: string }) {
  return (
    <details>
      <summary>{submit}</summary>
      <OnceForm action={actOnOrder} formKey={formKey} submit={submit} back={back}>
        <Envelope line={line} act={act} />
      </OnceForm>
    </details>
  );
}
