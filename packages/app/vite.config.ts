import { defineConfig } from 'vite';
import { sourceAliases } from '../../scripts/lib/source-aliases.mjs';

export default defineConfig({
  base: './',
  resolve: { alias: sourceAliases },
});
