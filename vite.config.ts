import { cpSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };

/** Presets lie beside the page, so that a static host can offer them with their masters. */
const presetsBeside = (): Plugin => ({
  name: 'presets-beside',
  writeBundle: ({ dir }) => {
    if (!dir) return;
    const wanted = /\.(yaml|stl|svg)$/;
    for (const entry of readdirSync('presets', { recursive: true, encoding: 'utf8' })) {
      if (wanted.test(entry)) cpSync(join('presets', entry), join(dir, 'presets', entry));
    }
  },
});

/** The kernel's loader asks for this module only where it runs in Node, which a page never does. */
const withoutNode = (): Plugin => ({
  name: 'without-node',
  enforce: 'pre',
  resolveId: (id) => (id === 'node:module' ? '\0without-node' : undefined),
  load: (id) => (id === '\0without-node' ? 'export {};' : undefined),
});

/** One HTML file: workers come from the bundle itself, scripts and styles stand in the page. */
const oneFile = (): Plugin => ({
  name: 'one-file',
  enforce: 'post',
  generateBundle: (_, bundle) => {
    const page = bundle['index.html'];
    if (page?.type !== 'asset') throw new Error('one-file: there is no page in the bundle');
    let html = String(page.source);
    for (const [name, item] of Object.entries(bundle)) {
      if (item === page) continue;
      const text = item.type === 'chunk' ? item.code : String(item.source);
      const quoted = name.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
      // Replacers are functions: a `$` in the code must stay as it is.
      html = html
        .replace(new RegExp(`<link[^>]*href="\\./${quoted}"[^>]*>`), () => `<style>${text}</style>`)
        .replace(
          new RegExp(`<script[^>]*src="\\./${quoted}"[^>]*></script>`),
          () => `<script type="module">${text.replaceAll('</script', '<\\/script')}</script>`,
        );
      delete bundle[name];
    }
    page.source = html;
    page.fileName = 'discwright.html';
  },
});

export default defineConfig(({ mode }) => {
  const single = mode === 'one-file';
  const rolldownOptions = {
    // How long plugins take is nobody's concern who builds the page.
    checks: { pluginTimings: false },
    ...(single && { output: { codeSplitting: false } }),
  };
  return {
    root: 'src/preview',
    base: './',
    publicDir: false,
    resolve: {
      // Workers start from a file of their own, or from the page's own text where there is but one file.
      alias: single ? [{ find: './start-workers.ts', replacement: './start-workers-inline.ts' }] : [],
    },
    oxc: { jsx: { runtime: 'automatic' as const, importSource: 'preact' } },
    define: { __ONE_FILE__: JSON.stringify(single), __VERSION__: JSON.stringify(version) },
    // A page from disk may start plain workers only, no modules (Chromium).
    worker: {
      format: single ? ('iife' as const) : ('es' as const),
      plugins: () => [withoutNode()],
      rolldownOptions,
    },
    plugins: [withoutNode(), single ? oneFile() : presetsBeside()],
    build: {
      outDir: single ? '../../dist/preview-one-file' : '../../dist/preview',
      emptyOutDir: true,
      target: 'es2023',
      reportCompressedSize: false,
      chunkSizeWarningLimit: 4000,
      rolldownOptions,
      ...(single && { assetsInlineLimit: Number.MAX_SAFE_INTEGER, cssCodeSplit: false }),
    },
  };
});
