import type { TestProject } from 'vitest/node';
import { startBrowser } from './browser.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the browser listens. */
    browser: string;
  }
}

/** Starts the browser for all files of this folder, and ends it after the last. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await startBrowser();
  project.provide('browser', server.wsEndpoint());
  return () => server.close();
}
