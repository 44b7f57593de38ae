import type { NextConfig } from "next";

const config: NextConfig = {
  poweredByHeader: false,
  typescript: { ignoreBuildErrors: true }, // types are checked by themselves; whoever starts the site need not wait for it
  experimental: { authInterrupts: true }, // a page that a role may not open answers 403 with app/forbidden.tsx
  serverExternalPackages: ["pg", "pg-copy-streams", "pdfkit", "sharp"],
  headers: async () => [
    {
      source: "/:path*",
      headers: [
        { key: "Strict-Transport-Security", value: "max-age=63072000" }, // browsers heed it only where it came by https
        { key: "X-Content-Type-Options", value: "nosniff" },
        { key: "Referrer-Policy", value: "same-origin" },
      ],
    },
    {
      // What people upload may do nothing here. Every other answer has a policy of its own, see app/_http/content-policy.ts.
      source: "/jobs/:number/photos/:id",
      headers: [{ key: "Content-Security-Policy", value: "default-src 'none'; sandbox" }],
    },
  ],
};

export default config;
