/** What the lock file says of the packages; only what is read here. */
export interface Lock {
  readonly packages: Readonly<Record<string, LockedPackage>>;
}

interface LockedPackage {
  /** Only where a package stands under another's name. */
  readonly name?: string;
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
}

interface NamedReason {
  readonly license: string;
  readonly reason: string;
}

/** They ask for no more than that their notice is kept. */
const permissive = new Set(['0BSD', 'Apache-2.0', 'BSD-2-Clause', 'BSD-3-Clause', 'CC0-1.0', 'ISC', 'MIT']);

/** Read by a person, because the package itself does not say it in a word. */
const named: Readonly<Record<string, NamedReason>> = {
  'dejavu-fonts-ttf': {
    license: 'Bitstream Vera and Arev',
    reason:
      'may be used, changed and sold as part of a larger program, under another name if changed; the package has the text',
  },
  'png-js': { license: 'MIT', reason: 'its file LICENSE; its package.json leaves it out' },
};

/**
 * Name, version and license of every package of the production tree (those for any machine), as rows of a table. A
 * license that is not permissive and not named with a reason throws, and so does a reason that is not needed.
 */
export function licenseRows(lock: Lock, reasons: Readonly<Record<string, NamedReason>> = named): string[] {
  const rows = new Set<string>();
  const unused = new Set(Object.keys(reasons));
  for (const [path, locked] of Object.entries(lock.packages)) {
    if (path === '' || locked.dev) continue;
    const name = locked.name ?? path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
    const { version, license } = locked;
    if (version === undefined) throw new Error(`${path} has no version in the lock file`);
    if (license !== undefined && permissive.has(license)) {
      rows.add(`| \`${name}\` | ${version} | ${license} |`);
      continue;
    }
    const by = reasons[name];
    if (!by)
      throw new Error(`${name} ${version} has the license ${license ?? 'nobody states'}: not permissive`);
    unused.delete(name);
    rows.add(`| \`${name}\` | ${version} | ${by.license}: ${by.reason} |`);
  }
  if (unused.size > 0) throw new Error(`no reason is needed for the license of ${[...unused].join(', ')}`);
  return [...rows].sort();
}

export const licensesPage = (lock: Lock): string => `# Licenses

Every package an installation of discwright carries (\`npm ci\`, then \`npm prune --omit=dev\`), on any machine; the page holds
parts of some of them. Generated from \`package-lock.json\` by \`npm run generate\`; do not edit.

| package | version | license |
| --- | --- | --- |
${licenseRows(lock).join('\n')}
`;
