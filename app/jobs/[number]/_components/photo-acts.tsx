"use client";
import { createContext, type ReactNode, use, useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { changePhoto, type PhotoActState } from "../photos/actions";

interface Acts {
  readonly jobNumber: string;
  readonly act: (form: FormData) => void;
  readonly waiting: boolean;
}

const PhotoActsContext = createContext<Acts | undefined>(undefined);
const untouched: PhotoActState = { said: "", undo: undefined };

/** Around the photos of a job: what was done last is said here, with its undo, since the photo itself is gone. */
export function PhotoActs({ jobNumber, children }: { readonly jobNumber: string; readonly children: ReactNode }) {
  const [state, act, waiting] = useActionState(changePhoto, untouched);
  return (
    <PhotoActsContext value={{ jobNumber, act, waiting }}>
      <div role="status" className="no-print">
        {state.said !== "" && <p>{state.said}</p>}
        {state.undo !== undefined && (
          <form action={act}>
            <input type="hidden" name="job" value={jobNumber} />
            <input type="hidden" name="id" value={state.undo} />
            <Button weight="plain" name="act" value="back" disabled={waiting}>
              Bring it back
            </Button>
          </form>
        )}
      </div>
      {children}
    </PhotoActsContext>
  );
}

export function TakeOff({ id, what }: { readonly id: string; readonly what: string }) {
  const acts = use(PhotoActsContext);
  if (acts === undefined) return null;
  return (
    <form action={acts.act} className="no-print">
      <input type="hidden" name="job" value={acts.jobNumber} />
      <input type="hidden" name="id" value={id} />
      <Button weight="plain" disabled={acts.waiting}>
        Take off<span className="only-heard">: {what}</span>
      </Button>
    </form>
  );
}
