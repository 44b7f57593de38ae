import type { Metadata } from "next";
import Link from "next/link";
import { Page } from "./_ui/page";
import { places } from "./_ui/places";

export const metadata: Metadata = { title: "Nothing at this address" };

export default function NotFound() {
  return (
    <Page
      title="There is nothing at this address"
      margin={<p>Addresses hold the filter of a view. One that was cut short in a mail leads nowhere.</p>}
    >
      <p>
        The link may be incomplete, or what it led to was taken back with the load that brought it. Look the serial, job
        or claim number up in its place:
      </p>
      <ul>
        {places.map(({ name, href }) => (
          <li key={href}>
            <Link href={href}>{name}</Link>
          </li>
        ))}
      </ul>
    </Page>
  );
}
