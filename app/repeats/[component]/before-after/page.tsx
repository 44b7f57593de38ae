import type { Metadata } from "next";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { Field } from "@/app/_ui/field";
import { ComparisonPlace } from "../_components/comparison-place";

export const metadata: Metadata = { title: "Before and after a day" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly component: string }>;
  readonly searchParams: Promise<AddressValues>;
}

export default async function BeforeAfterPage({ params, searchParams }: Props) {
  await mayOpen("/repeats/[component]/before-after");
  const { component } = await params;
  return (
    <ComparisonPlace
      kind="before-after"
      component={component}
      values={await searchParams}
      field={({ second }) => <Field label="Before and after" name="on" type="date" value={second} />}
    />
  );
}
