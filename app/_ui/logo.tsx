/** The interval mark between brackets: bracket, band, reading, band, bracket. */
export function Logo() {
  return (
    <svg aria-hidden="true" width="56" height="20" viewBox="0 0 56 20" fill="none" stroke="currentColor">
      <path d="M9 2H3v16h6M47 2h6v16h-6" strokeWidth="2.5" />
      <path d="M10 10h36" strokeWidth="2.5" />
      <circle cx="25" cy="10" r="5" fill="currentColor" stroke="none" />
    </svg>
  );
}
