import type { NextConfig } from "next";

const development = process.env.NODE_ENV === "development";

/** The page loads nothing from anywhere but its own server. Inline scripts stay allowed until each carries a nonce. */
const contentSecurityPolicy = [
  "default-src 'self'",
  `script-src 'self' 'unsafe-inline'${development ? " 'unsafe-eval'" : ""}`,
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  `connect-src 'self'${development ? " ws:" : ""}`,
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join("; ");

const config: NextConfig = {
  poweredByHeader: false,
  typescript: { ignoreBuildErrors: true }, // types are checked by themselves; whoever starts the site need not wait for it
  experimental: { authInterrupts: true }, // a page that a role may not open answers 403 with app/forbidden.tsx
  serverExternalPackages: ["pg", "pg-copy-streams", "pdfkit", "sharp"],
  headers: async () => [
    {
      source: "/:path*",
      headers: [
        { key: "Content-Security-Policy", value: contentSecurityPolicy },
        { key: "Strict-Transport-Security", value: "max-age=63072000" }, // browsers heed it only where it came by https
        { key: "X-Content-Type-Options", value: "nosniff" },
        { key: "Referrer-Policy", value: "same-origin" },
      ],
    },
    {
      // What people upload may do nothing here; the last entry for a path is the one that is sent.
      source: "/jobs/:number/photos/:id",
      headers: [{ key: "Content-Security-Policy", value: "default-src 'none'; sandbox" }],
    },
  ],
};

export default config;
