import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { Sample } from "../_components/sample";
import { type Answer, answers, exampleAnswer, exampleProblem, exampleRequest } from "./words";

export const metadata: Metadata = { title: "Sending jobs" };

export default async function SendingPage() {
  await mayOpen("/files/sending");
  return (
    <Page
      above={<Link href="/files">Files in</Link>}
      title="Another program can send closed jobs as they happen"
      margin={<Basis />}
      actions={<ButtonLink href="/files/keys">Keys</ButtonLink>}
    >
      <section id="body" className="stack">
        <h2>The request</h2>
        <p>
          <code>POST /api/jobs</code> takes a JSON document: a list of jobs in{" "}
          <Link href="/files/columns">our column names</Link>, each with its part lines and readings where it has any.
          Its <a href="/api/jobs/schema">JSON Schema</a> is made from the rules that read it. Part lines and readings
          need no job number and no number of their own: both follow from their place.
        </p>
        <Sample title="Example of a request">{exampleRequest}</Sample>
      </section>
      <section id="keys" className="stack-tight">
        <h2>Who may send</h2>
        <p>
          Each request names a key in the header <code>Authorization: Bearer …</code>. Keys are made and ended under{" "}
          <Link href="/files/keys">Keys</Link>; each is shown once, and only its hash is kept. The owner makes them,
          each for one thing: to send closed jobs, or to take files.
        </p>
      </section>
      <section id="twice" className="stack-tight">
        <h2>Sent twice, done once</h2>
        <p>
          Each request carries a header <code>Idempotency-Key</code> with a text of your own. Where the answer was lost,
          send the same again with the same text: it is answered as before and nothing is done twice. The text is
          remembered for a day.
        </p>
      </section>
      <section id="limits" className="stack-tight">
        <h2>Limits</h2>
        <p>Up to 1,000 jobs and 10 MB in one request. All of a request is added, or nothing of it.</p>
      </section>
      <section className="stack">
        <h2>The answers</h2>
        <Table
          caption="Answers by their status"
          captionHidden
          columns={columns}
          rows={answers}
          rowKey={({ status, when }) => `${status} ${when}`}
        />
        <Sample title="Example of an answer">{exampleAnswer}</Sample>
      </section>
      <section id="problems" className="stack">
        <h2>When something is wrong</h2>
        <p>
          Errors are problem documents (RFC 9457). Where places of the document are wrong, each is named by its JSON
          Pointer (RFC 6901) with its value, what is wrong and what to do.
        </p>
        <Sample title="Example of a problem">{exampleProblem}</Sample>
      </section>
    </Page>
  );
}

const columns: readonly Column<Answer>[] = [
  { key: "status", head: "Status", kind: "number", cell: ({ status }) => status },
  { key: "when", head: "When", cell: ({ when }) => when },
  { key: "todo", head: "What to do", cell: ({ todo }) => todo },
];

function Basis() {
  return (
    <>
      <p>What is sent is a load like any other: it stands under Files in, and can be taken back whole.</p>
      <p>A job that is here already is updated field by field; a field edited by hand here is not overwritten.</p>
    </>
  );
}
