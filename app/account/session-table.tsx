import { Button } from "@/app/_ui/button";
import { type Column, Table } from "@/app/_ui/table";
import type { OpenSession } from "@/db/queries/sessions";
import { instantOnClock } from "@/lib/calendar/instant";
import { endOneSession, endOtherSessions } from "./actions";

interface Props {
  readonly sessions: readonly OpenSession[];
  readonly ownSessionId: string;
  readonly timeZone: string;
}

/** Where the person is signed in, each of which they can end. */
export function SessionTable({ sessions, ownSessionId, timeZone }: Props) {
  return (
    <>
      <Table
        caption="Where you are signed in"
        columns={columnsFor(ownSessionId, timeZone)}
        rows={sessions}
        rowKey={({ id }) => id}
      />
      {sessions.length > 1 && (
        <form action={endOtherSessions}>
          <Button weight="plain">Sign out everywhere else</Button>
        </form>
      )}
    </>
  );
}

function columnsFor(ownSessionId: string, timeZone: string): readonly Column<OpenSession>[] {
  const minute = (instant: string) => instantOnClock(instant, timeZone);
  return [
    { key: "browser", head: "Browser", cell: ({ browser }) => browserWords(browser) },
    { key: "from", head: "From", cell: ({ address }) => address || "not known", wideOnly: true },
    { key: "start", head: "Signed in", cell: ({ startedAt }) => minute(startedAt) },
    { key: "seen", head: "Last used", cell: ({ seenAt }) => minute(seenAt) },
    {
      key: "end",
      head: "State",
      cell: ({ id, startedAt }) =>
        id === ownSessionId ? (
          "this one"
        ) : (
          <form action={endOneSession}>
            <input type="hidden" name="session" value={id} />
            <Button weight="plain">
              End<span className="only-heard"> the one of {minute(startedAt)}</span>
            </Button>
          </form>
        ),
    },
  ];
}

/** The first known name in what a browser says of itself; such texts name several that they resemble. */
function browserWords(agent: string): string {
  const kind = [/Edg\w*\/\d+/, /Firefox\/\d+/, /Chrom\w*\/\d+/, /Safari\/\d+/]
    .map((name) => name.exec(agent)?.[0])
    .find(Boolean);
  const device = /\(([^;)]+)/.exec(agent)?.[1];
  return [kind?.replace("/", " "), device].filter(Boolean).join(", ") || "not named";
}
