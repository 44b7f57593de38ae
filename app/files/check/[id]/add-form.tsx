"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { type AddState, addFile } from "./actions";

interface Props {
  readonly upload: string;
  readonly mode: "add" | "add and set aside";
  /** The act in words with its numbers. */
  readonly words: string;
}

const untouched: AddState = { problem: undefined };

export function AddForm({ upload, mode, words }: Props) {
  const [state, add, waiting] = useActionState(addFile, untouched);
  return (
    <form action={add}>
      <input type="hidden" name="upload" value={upload} />
      <input type="hidden" name="mode" value={mode} />
      {state.problem !== undefined && <p role="alert">{state.problem}</p>}
      <Button disabled={waiting}>{waiting ? "Adding…" : words}</Button>
    </form>
  );
}
