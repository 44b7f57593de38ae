import Link from "next/link";
import type { PublishedVersion } from "@/db/queries/sheet-versions";
import { instantOnClock } from "@/lib/calendar/instant";
import { type Sheet, sheetKey } from "@/lib/sheets/sheet";

interface Props {
  readonly sheet: Sheet;
  readonly versions: readonly PublishedVersion[];
  readonly shown: number;
  readonly timeZone: string;
}

/** Every version with who, when and why; jobs name the one that they were worked by. */
export function VersionList({ sheet, versions, shown, timeZone }: Props) {
  const href = (version: number) => `/shop/sheets/${sheetKey(sheet)}?version=${version}`;
  const named = (version: number) =>
    version === shown ? <strong>Version {version}</strong> : <Link href={href(version)}>Version {version}</Link>;
  return (
    <>
      <p>
        What a check of the catalogue measures, between which points and what it proves cannot be edited away, nor its
        cautions. Checks can be added, also of your own; order, minutes, photos, further cautions, what a check waits
        for and your own words can be changed.
      </p>
      <p>
        Whatever the order here, checks with the power off are asked before powered ones, and live ones last. The sheet
        of the machine, local codes and licensed practice decide.
      </p>
      <ul>
        {versions.map(({ version, publishedAt, by, reason }) => (
          <li key={version}>
            {named(version)}, {instantOnClock(publishedAt, timeZone)}, {by}: {reason}
          </li>
        ))}
        <li>
          {named(1)} came with the program{versions.length === 0 && "; nobody has edited this sheet"}.
        </li>
      </ul>
    </>
  );
}
