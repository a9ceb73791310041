import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { sourceAliases } from '../../scripts/lib/source-aliases.mjs';
import { moreLicences } from './build/more-licences.js';
import { tutorialPage } from './build/tutorial-page.js';

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
  "manifest-src 'self'",
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

/**
 * Installable, and without a network once it has been loaded: every file, those too that are only
 * fetched when they are needed, is put by in the background. A newer version waits until the maker
 * asks for it (src/keep/updates.ts).
 */
const offline = VitePWA({
  registerType: 'prompt',
  // The page registers it itself, under its policy.
  injectRegister: false,
  manifest: {
    id: './',
    name: 'Halfhitch',
    short_name: 'Halfhitch',
    description: 'Draw, check, cut and tie knotted bracelets, one half hitch after the other.',
    lang: 'en-GB',
    start_url: './',
    scope: './',
    display: 'standalone',
    theme_color: '#f4f6f6',
    background_color: '#f2f5f5',
    categories: ['lifestyle', 'productivity'],
    icons: [
      { src: './icons/burgee-192.png', sizes: '192x192', type: 'image/png' },
      { src: './icons/burgee-512.png', sizes: '512x512', type: 'image/png' },
      {
        src: './icons/burgee-maskable-512.png',
        sizes: '512x512',
        type: 'image/png',
        purpose: 'maskable',
      },
    ],
  },
  workbox: {
    globPatterns: ['**/*.{html,js,css,svg,png,wasm}'],
    // Their names change with what they hold.
    dontCacheBustURLsMatching: /assets\/.+-[\w-]{8}\.\w+$/,
    maximumFileSizeToCacheInBytes: 8 * 1024 * 1024,
    cleanupOutdatedCaches: true,
    clientsClaim: true,
    skipWaiting: false,
    inlineWorkboxRuntime: true,
    sourcemap: false,
    // What is missing must be missing, not the start page under another name.
    navigateFallback: null,
    ignoreURLParametersMatching: [/.*/],
  },
});

const licences = moreLicences();

/** The solver asks for it in Node only, behind a condition that a bundler can't see through. */
const noNodeModule: Plugin = {
  name: 'halfhitch-no-node-module',
  enforce: 'pre',
  resolveId: (id) => (id === 'node:module' ? '\0node-module' : null),
  load: (id) => (id === '\0node-module' ? 'export {};' : null),
};

export default defineConfig({
  base: './',
  resolve: { alias: sourceAliases },
  plugins: [contentPolicy, tutorialPage(), licences.page, ...offline],
  worker: { format: 'es', plugins: () => [noNodeModule, licences.worker()] },
  build: {
    target: 'es2022',
    modulePreload: { polyfill: false },
    // The largest is the 3D library, in a file of its own that is fetched once a knot is in sight.
    chunkSizeWarningLimit: 700,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
});
