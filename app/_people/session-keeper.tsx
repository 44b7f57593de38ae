"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { forgetTyped, noteTyped } from "./last-typed";
import styles from "./session-keeper.module.css";
import { type SessionOfPage, sessionOfPage } from "./session-of-page";

interface Held {
  readonly form: HTMLFormElement;
  readonly submitter: HTMLElement | null;
}

/**
 * Keeps what was typed into a page that was left open until its session ended. Before a form goes to the server, the page
 * asks whether the session still holds; where it does not, the form stays as it is, files and all, until the same
 * person has signed in beside it.
 */
export function SessionKeeper({ personId }: { readonly personId: string }) {
  const [state, setState] = useState<SessionOfPage>("holds");
  const dialog = useRef<HTMLDialogElement>(null);
  const held = useRef<Held | undefined>(undefined);
  const passing = useRef<HTMLFormElement | undefined>(undefined);

  const send = useCallback(() => {
    const last = held.current;
    held.current = undefined;
    if (last === undefined) return;
    noteTyped(last.form);
    passing.current = last.form; // the event below comes while this call runs
    last.form.requestSubmit(last.submitter?.isConnected ? last.submitter : null);
    passing.current = undefined;
  }, []);

  useEffect(() => {
    const submit = (event: SubmitEvent) => {
      const form = event.target;
      if (!(form instanceof HTMLFormElement) || form === passing.current || !goesToServer(form)) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      if (held.current?.form === form && dialog.current?.open !== true) return; // it is being asked already
      held.current = { form, submitter: event.submitter };
      void sessionOfPage(personId).then((found) => {
        if (found === "holds") return send();
        setState(found);
        dialog.current?.showModal();
      });
    };
    window.addEventListener("submit", submit, true); // before the page's own listeners
    return () => {
      window.removeEventListener("submit", submit, true);
      forgetTyped();
    };
  }, [personId, send]);

  useEffect(() => {
    const look = () => {
      if (dialog.current?.open && document.visibilityState === "visible") void sessionOfPage(personId).then(setState);
    };
    document.addEventListener("visibilitychange", look);
    window.addEventListener("focus", look);
    return () => {
      document.removeEventListener("visibilitychange", look);
      window.removeEventListener("focus", look);
    };
  }, [personId]);

  const { title, text } = words[state];
  return (
    <dialog
      ref={dialog}
      className={styles.dialog}
      aria-labelledby="session-title"
      onClose={() => {
        held.current = undefined;
      }}
    >
      <div className="stack-tight" aria-live="polite">
        <h2 id="session-title">{title}</h2>
        <p>{text}</p>
      </div>
      <div className="cluster">
        {state === "holds" ? (
          <Button
            type="button"
            onClick={() => {
              const last = held.current;
              dialog.current?.close();
              held.current = last; // closing lets go of it
              send();
            }}
          >
            Send it now
          </Button>
        ) : (
          <>
            {state !== "no answer" && (
              <a href="/sign-in?to=/account/back" target="_blank" rel="noreferrer">
                Sign in, in a page beside this one
              </a>
            )}
            <Button type="button" weight="plain" onClick={() => void sessionOfPage(personId).then(setState)}>
              Look again
            </Button>
          </>
        )}
        <Button type="button" weight="plain" onClick={() => dialog.current?.close()}>
          Back to what I typed
        </Button>
      </div>
    </dialog>
  );
}

const words: Readonly<Record<SessionOfPage, { readonly title: string; readonly text: string }>> = {
  holds: { title: "You are signed in again", text: "What you typed stands as you left it. It can be sent." },
  over: {
    title: "Your session is over, and nothing was sent",
    text: "What you typed stays on this page. Sign in beside it, come back here and send it.",
  },
  "somebody else": {
    title: "Somebody else is signed in now, and nothing was sent",
    text: "It would be stored under their name. What you typed stays on this page until you sign in again beside it.",
  },
  "no answer": {
    title: "The server did not answer, and nothing was sent",
    text: "What you typed stays on this page. Look again in a moment.",
  },
};

/** Filters only ask; a check sheet keeps its answers on the device first; what stands in the strip loses nothing. */
function goesToServer(form: HTMLFormElement): boolean {
  if (form.getAttribute("method")?.toLowerCase() === "get" || form.method === "dialog") return false;
  return form.closest("header") === null && !/^\/sheet\/(job|asked)\//.test(window.location.pathname);
}
