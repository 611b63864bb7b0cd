/** The same as in package.json (a test holds them together); a constant, so that --help reads no file. */
export const version = '0.1.0';
