import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { Page } from "@/app/_ui/page";
import { formatBytes } from "@/lib/format/format-bytes";
import { Steps } from "../_components/steps";
import { mostBytes } from "../uploads";
import { ChooseFile } from "./choose-file";

export const metadata: Metadata = { title: "Load a file" };

export default async function NewFilePage() {
  await mayOpen("/files/new");
  return (
    <Page above={<Link href="/files">Files in</Link>} title="Load a file" margin={<Basis />}>
      <Steps at="choose" hrefs={{}} />
      <p>
        Text with commas, semicolons, tabs or bars between the columns, a workbook (.xlsx), or JSON Lines; units, jobs,
        part lines, readings and more, in <Link href="/files/columns">our columns</Link> or in those of any other
        program. Up to {formatBytes(mostBytes)}; a workbook up to 200 MB once unpacked, without a password.
      </p>
      <ChooseFile mostBytes={mostBytes} />
    </Page>
  );
}

function Basis() {
  return (
    <>
      <p>Choosing a file adds nothing yet. Every row is checked first, and you see what would happen.</p>
      <p>The same file twice changes nothing. Every load can be taken back.</p>
    </>
  );
}
