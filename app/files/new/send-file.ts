/** What came of sending a file. */
export type Sent =
  | { readonly kind: "here"; readonly address: string }
  | { readonly kind: "refused"; readonly sentence: string }
  | { readonly kind: "stopped" };

interface Sending {
  readonly onProgress: (sentBytes: number) => void;
  readonly signal: AbortSignal;
}

/** Sends a file as the raw body. By XMLHttpRequest, since fetch does not tell how much has gone. */
export function sendFile(file: File, { onProgress, signal }: Sending): Promise<Sent> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open("POST", `/files/upload?name=${encodeURIComponent(file.name)}`);
    request.responseType = "json";
    request.upload.onprogress = ({ loaded }) => onProgress(loaded);
    request.onload = () => resolve(answerOf(request.response));
    request.onerror = () =>
      resolve({ kind: "refused", sentence: "The file could not be sent. Check the connection and send it again." });
    request.onabort = () => resolve({ kind: "stopped" });
    signal.addEventListener("abort", () => request.abort(), { once: true });
    request.send(file);
  });
}

function answerOf(response: unknown): Sent {
  const { address, detail }: { address?: unknown; detail?: unknown } = response ?? {};
  if (typeof address === "string") return { kind: "here", address };
  return {
    kind: "refused",
    sentence: typeof detail === "string" ? detail : "The site could not take the file. Send it again.",
  };
}
