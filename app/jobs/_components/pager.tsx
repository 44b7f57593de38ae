import Link from "next/link";
import { jobsAddress } from "../jobs-address";

interface Props {
  readonly page: number;
  readonly pages: number;
  readonly inForce: readonly { readonly name: string; readonly value: string }[];
}

export function Pager({ page, pages, inForce }: Props) {
  if (pages <= 1) return null;
  const to = (target: number) => `/jobs?${jobsAddress(inForce, { page: target === 1 ? undefined : String(target) })}`;
  return (
    <nav aria-label="Pages of the list" className="cluster">
      {page > 1 && (
        <Link href={to(page - 1)} rel="prev">
          Previous
        </Link>
      )}
      <span>
        Page {page} of {pages}
      </span>
      {page < pages && (
        <Link href={to(page + 1)} rel="next">
          Next
        </Link>
      )}
    </nav>
  );
}
