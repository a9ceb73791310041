import { defineConfig, type Plugin } from 'vite';
import { sourceAliases } from '../../scripts/lib/source-aliases.mjs';

/**
 * Nothing but the app's own files may run or be fetched, and no string may become script or
 * markup. Set in the page itself, so that it holds wherever the files are served from; only in
 * builds, since the development server writes scripts and styles into the page.
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "worker-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types lit-html halfhitch',
].join('; ');

const contentPolicy: Plugin = {
  name: 'halfhitch-content-policy',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
      injectTo: 'head-prepend',
    },
  ],
};

export default defineConfig({
  base: './',
  resolve: { alias: sourceAliases },
  plugins: [contentPolicy],
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    modulePreload: { polyfill: false },
    // The largest is the 3D library, in a file of its own that is fetched once a knot is in sight.
    chunkSizeWarningLimit: 700,
  },
});
