import Link from "next/link";
import { type UnclaimedAddress, unclaimedHref } from "../read-unclaimed-address";

interface Props {
  readonly page: number;
  readonly pages: number;
  readonly inForce: UnclaimedAddress["inForce"];
}

export function Pages({ page, pages, inForce }: Props) {
  if (pages <= 1) return null;
  const href = (to: number) => unclaimedHref(inForce, { page: to === 1 ? undefined : String(to) });
  return (
    <nav aria-label="Pages" className="cluster no-print">
      {page > 1 && <Link href={href(page - 1)}>Previous</Link>}
      <span>
        Page {page} of {pages}
      </span>
      {page < pages && <Link href={href(page + 1)}>Next</Link>}
    </nav>
  );
}
