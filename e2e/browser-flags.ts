/** No sandbox only where there cannot be one (as root); and nothing that looks for hosts outside by itself. */
export const browserFlags: readonly string[] = [
  ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--disable-dev-shm-usage",
  `--disable-features=${without().join(",")}`,
];

/**
 * What the browser leaves out. The first are pages of its own that it would load behind each window's address bar, at a
 * quarter of what a window costs; the others are what the test runner leaves out, since of two such lists the last counts.
 */
function without(): readonly string[] {
  return [
    "WebUIOmniboxPopup",
    "WebUIOmniboxAimPopup",
    "WebUIOmniboxFullPopup",
    "AimEnabled",
    "AvoidCorsURLLoaderRestartOnRedirect",
    "AvoidUnnecessaryBeforeUnloadCheckSync",
    "DestroyProfileOnBrowserClose",
    "HttpsFirstBalancedModeAutoEnable",
    "HttpsUpgrades",
    "LensOverlay",
    "MediaRouter",
    "NetworkTimeServiceQuerying",
    "OptimizationHints",
    "PaintHolding",
    "PreconnectToSearch",
    "ThirdPartyStoragePartitioning",
  ];
}
