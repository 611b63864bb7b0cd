import { type Browser, chromium } from 'playwright-core';
import { inject } from 'vitest';

/** The one browser of the run, as `one-browser.ts` started it; closing it closes what this file opened in it. */
export const connectBrowser = (): Promise<Browser> => chromium.connect(inject('browser'));
