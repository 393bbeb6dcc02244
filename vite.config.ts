import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Builds the drawing office into dist/office: files only, nothing inline, so that a strict policy holds. */
export default defineConfig({
  root: fileURLToPath(new URL('./src/office', import.meta.url)),
  base: './',
  plugins: [react()],
  // The kernel asks for node:module only where it runs in Node.
  worker: { format: 'es', rolldownOptions: { external: ['node:module'] } },
  build: {
    outDir: fileURLToPath(new URL('./dist/office', import.meta.url)),
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: 0,
    // The solids are large and come on their own, after the first screen.
    chunkSizeWarningLimit: 700,
    modulePreload: { polyfill: false },
  },
});
