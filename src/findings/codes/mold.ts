import { codes } from './entry.ts';

export const moldCodes = codes({
  'mold.parting-conflict': {
    severity: 'warn',
    means:
      'The parting surface cannot reach a master: neighbors, the rim or a fixture leave too little room for its slope.',
    remedy: 'Give the place named more room, sink the masters to nearer heights, or allow a steeper slope.',
  },
  'mold.parting-limit': {
    severity: 'warn',
    means: 'A master is wholly above or below the height the parting surface may reach.',
    remedy: 'Sink the master to another depth or widen `parting.limit`.',
  },
  'mold.parting-steep': {
    severity: 'warn',
    means: 'Between close neighbors the parting surface had to be made steeper than asked for.',
    remedy: 'Move the neighbors apart or sink them to nearer heights.',
  },
  'mold.parting-grazes': {
    severity: 'warn',
    means: 'The parting surface runs along the skin of a master so closely that thin flakes are left.',
    remedy: 'Change the sink of the master a little, or turn it.',
  },
  'mold.undercut-locked': {
    severity: 'warn',
    means: 'No parting surface frees this master as it lies: it encloses undercuts of its own.',
    remedy: 'Turn the master, or rely on the rubber to give; a rigid half cannot release it.',
  },
  'mold.layered-columns': {
    severity: 'note',
    means: 'Seen from above, parts of a master lie over other parts of it; what is between stays undercut.',
    remedy: 'Look at the place named: a turned master may have none.',
  },
  'mold.knife-edge': {
    severity: 'warn',
    means:
      'A master runs out so thin that metal is not likely to fill it and the halves meet in a blade there.',
    remedy: 'Thicken the edge of the master.',
  },
  'mold.thin-features': {
    severity: 'warn',
    means: 'A master has features narrower than two cells of the parting surface, which it cannot follow.',
    remedy: 'Choose a finer `parting.cell`.',
  },
  'mold.crossed-shells': {
    severity: 'warn',
    means: 'A master crosses or overlaps itself, so that inside and outside are not told apart there.',
    remedy: 'Mend the master, or let the import make it anew.',
  },
  'mold.small-build-ups': {
    severity: 'note',
    means: 'Build-ups too small to be printed and handled are left out of the files.',
    remedy: 'Pack scraps of rubber there by hand, or let the rubber flow in when the half is pressed.',
  },
  'mold.loose-piece': {
    severity: 'warn',
    means: 'A piece of a half hangs on nothing: a master encloses it.',
    remedy: 'Open or close the hole in the master; the piece is left out of the half.',
  },
});
