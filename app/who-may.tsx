"use client";
import { usePathname } from "next/navigation";
import { actOfAddress } from "@/app/_people/act-of-address";
import { describeWhoMay } from "@/lib/people/permissions";

/** Reacts to the address only: whom does this kind of page belong to? */
export function WhoMay() {
  const act = actOfAddress(usePathname());
  return act === undefined ? null : <p>{describeWhoMay(act)}</p>;
}
