import { codes } from './entry.ts';

/** Play of the closed halves, release of castings, support of thin bits. */
export const releaseCodes = codes({
  'registration.mismatch': {
    severity: 'warn',
    means:
      'The bosses let the halves shift or turn so far that castings get a step along the parting line. ' +
      'The limit is from memory; set your own as `limits.mismatch`.',
    remedy: 'Give the bosses less clearance, or set them farther apart.',
  },
  'registration.no-flex': {
    severity: 'note',
    means: 'Play cannot be computed for rubber halves without knowing how far the rubber lets a boss move.',
    remedy: 'Add `registration: { flex: ... }`, the sideways give of a boss in its socket.',
  },
  'walls.channel': {
    severity: 'warn',
    means:
      'A gate or vent runs close by a cavity that it does not serve: the wall between them tears or leaks.',
    remedy: 'Turn or move the master, or give the channel another way.',
  },
  'walls.tab': {
    severity: 'warn',
    means: 'A cavity lies close to a tab or notch, where the halves are pried and handled.',
    remedy: 'Move the tab or notch to a free arc of the rim, or the master inward.',
  },
  'release.undercut': {
    severity: 'warn',
    means:
      'Much of the cavity is undercut: to let the casting out, the rubber has to bend farther than it is trusted to. ' +
      'The limit is a share of the volume of the cavity, from memory; set your own as `limits.undercut`.',
    remedy: 'Turn or sink the master differently; `discwright inspect --lie` ranks the ways it can lie.',
  },
  'release.locked': {
    severity: 'stop',
    means: 'A rigid half holds on to the casting: it cannot be lifted off without breaking one of them.',
    remedy:
      'Turn or sink the master differently (`discwright inspect --lie` ranks the ways), or set `fixture: { relieve: true }`.',
  },
  'release.relieved': {
    severity: 'note',
    means:
      'Undercuts of a rigid half are filled so that the casting can leave; the casting carries that metal.',
    remedy: 'File it off the castings, or turn or sink the master differently.',
  },
  'support.free': {
    severity: 'warn',
    means:
      'A thin bit of the master has nothing under it: it bends when the half is pressed. The limit, free length over ' +
      'thickness, is from memory; set your own as `limits.slenderness`.',
    remedy: 'Name the placement under `supports`, so that it gets a build-up, or sink it deeper.',
  },
});
