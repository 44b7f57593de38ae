"use client";
import { type ReactNode, useState } from "react";

interface Props {
  readonly open: boolean;
  readonly summary: ReactNode;
  readonly children: ReactNode;
}

/** A section that is open or folded when its page comes, and from then on as it is left: what is stored meanwhile folds nothing under a reader. */
export function OpenAtFirst({ open: atFirst, summary, children }: Props) {
  const [open, setOpen] = useState(atFirst);
  return (
    <details open={open} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{summary}</summary>
      {children}
    </details>
  );
}
