import { Notice } from "@/app/_ui/notice";

/** What the address says and cannot mean, each with what was done instead. */
export function AddressNotices({ notices }: { readonly notices: readonly string[] }) {
  if (notices.length === 0) return null;
  return (
    <Notice status="note" title="Part of the address was left out">
      {notices.map((notice) => (
        <p key={notice}>{notice}</p>
      ))}
    </Notice>
  );
}
