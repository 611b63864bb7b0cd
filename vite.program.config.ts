import { defineConfig } from 'vite';

/**
 * The program for Node, in a few files: loading a file costs Node a millisecond or two, and a check asks for nearly a
 * thousand. Packages that load files of their own, or start threads, stay where they are installed.
 */
export default defineConfig({
  publicDir: false,
  ssr: { noExternal: true, external: ['manifold-3d', 'pdfkit', 'piscina'] },
  build: {
    ssr: true,
    outDir: 'dist/cli',
    target: 'node20.19',
    minify: false,
    rolldownOptions: {
      // What is started: by a person, as a thread of a batch, by a test within its own process.
      input: { main: 'cli/main.ts', 'make-variant': 'cli/batch/make-variant.ts', program: 'cli/program.ts' },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js', keepNames: true },
      checks: { pluginTimings: false },
    },
  },
});
