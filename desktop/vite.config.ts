import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The page, the same for a browser and for a window. Relative addresses serve both. */
export default defineConfig({
  root: here('./ui'),
  base: './',
  plugins: [react()],
  build: {
    outDir: here('../dist/web'),
    emptyOutDir: true,
    target: 'es2024',
    // Component library and charts travel in one file from this machine to itself.
    chunkSizeWarningLimit: 1500,
  },
});
