import type { Metadata } from "next";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { AgainstField } from "../_components/against-field";
import { ComparisonPlace } from "../_components/comparison-place";

export const metadata: Metadata = { title: "Compare two groups" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly component: string }>;
  readonly searchParams: Promise<AddressValues>;
}

export default async function ComparePage({ params, searchParams }: Props) {
  await mayOpen("/repeats/[component]/compare");
  const { component } = await params;
  return (
    <ComparisonPlace
      kind="compare"
      component={component}
      values={await searchParams}
      field={({ words, second }) => <AgainstField words={words} component={component} value={second} />}
    />
  );
}
