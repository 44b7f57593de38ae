import type { Metadata } from "next";
import Link from "next/link";
import { Page } from "@/app/_ui/page";
import { ChooseFile } from "./choose-file";

export const metadata: Metadata = { title: "Load a file" };

export default function NewFilePage() {
  return (
    <Page above={<Link href="/files">Files in</Link>} title="Load a file" margin={<Basis />}>
      <p>
        CSV with our own column names: units, jobs, part lines, readings, expected ranges or components; or coverage
        policies as JSON. Up to 2 GB. <Link href="/files/columns">Which columns?</Link>
      </p>
      <ChooseFile />
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
