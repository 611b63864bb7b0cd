import { codes } from './entry.ts';
import { thinWall, wall, wallSays } from './wall.ts';

/** Play of the closed halves, release of castings, support of thin bits. */
export const releaseCodes = codes({
  'registration.mismatch': {
    severity: 'warn',
    means: 'The bosses let the halves shift or turn so far that castings get a step along the parting line.',
    formula:
      'greatest |t + theta k x p| at the points of a cavity, over all shifts t and turns theta with |t + theta k x p_i| <= c_i at every boss; against `limits.mismatch`',
    source: 'closed form of plane rigid motion; starting limit from memory, editable in the plan',
    values: { measured: 'mm', limit: 'mm' },
    says: 'The halves can be {measured} off each other at {subject}, where {limit} is allowed.',
    remedy: 'Give the bosses less clearance, or set them farther apart.',
  },
  'registration.no-flex': {
    severity: 'note',
    means: 'Play cannot be computed for rubber halves without knowing how far the rubber lets a boss move.',
    says: 'How far the halves can shift and turn is not computed: the plan gives no `registration.flex`.',
    remedy: 'Add `flex` under `registration`: the sideways give of a boss in its socket.',
  },
  'walls.channel': {
    severity: 'warn',
    means:
      'A gate or vent runs close by a cavity that it does not serve: the wall between them tears or leaks.',
    formula: 'true distance of the surfaces of cavity and channel; against `limits.wall`',
    source: 'geometry; starting limit from memory, editable in the plan as `limits.wall`',
    values: wall,
    says: wallSays,
    remedy: 'Turn or move the master, or give the channel another way.',
  },
  'walls.tab': {
    ...thinWall,
    means: 'A cavity lies close to a tab or notch, where the halves are pried and handled.',
    formula: 'true distance of the surfaces of cavity and tab or notch; against `limits.wall`',
    source: 'geometry; starting limit from memory, editable in the plan as `limits.wall`',
    remedy: 'Move the tab or notch to a free arc of the rim, or the master inward.',
  },
  'walls.bolt': {
    ...thinWall,
    means:
      'A cavity lies close to a bolt of the can that goes through the disc: the wall between them tears.',
    formula:
      'true distance of cavity and bolt, its shank as wide as its thread; of the whole circle where the plan does not say how the bolts are turned; against `limits.wall`',
    source: 'geometry; starting limit from memory, editable in the plan as `limits.wall`',
    remedy: 'Move the master, or turn or widen the circle of bolts.',
  },
  'release.undercut': {
    severity: 'warn',
    means:
      'Much of the cavity is undercut: to let the casting out, the rubber has to bend farther than it is trusted to.',
    formula:
      'air between cavity and parting surface that the half would have to pass through, both halves, over the volume of the cavity; against `limits.undercut`',
    source: 'geometry, in columns; starting limit of a tenth from memory, editable in the plan',
    values: { measured: 'ratio', limit: 'ratio', volume: 'mm3', depth: 'mm' },
    says: '{measured} of {subject} is undercut, where {limit} is allowed: {volume}, {depth} at the deepest.',
    remedy: 'Turn or sink the master differently; `discwright inspect --lie` ranks the ways it can lie.',
  },
  'release.eye': {
    severity: 'warn',
    means:
      'The master has an eye, such as a bail or a handle on edge, that rubber goes through along the parting surface: it holds the casting, and is torn when the casting comes out.',
    formula:
      'handles of the mesh (its genus, from V - E + F) less the holes of its silhouette, which are filled by posts that lift out; thickness: greatest height of air enclosed in the columns',
    source: 'Euler and Poincare; geometry, in columns',
    values: { count: 'count', bridge: 'mm' },
    says: '{subject} has {count, plural, one {# eye} other {# eyes}} that rubber goes through along the parting surface, up to {bridge} thick at its mouth: it tears when the casting comes out.',
    remedy:
      'Lay the master so that the eye is seen from above, fill the eye and drill it after casting, or set a pin through it that is drawn before the halves part.',
  },
  'release.locked': {
    severity: 'stop',
    means: 'A rigid half holds on to the casting: it cannot be lifted off without breaking one of them.',
    formula: 'greatest height of undercut that 2 x 2 columns share; at most 0.05 mm',
    source: 'geometry, in columns; 0.05 mm is our own choice: what filing and play forgive',
    values: { measured: 'mm', limit: 'mm', half: ['lower', 'upper'], volume: 'mm3', cell: 'mm' },
    says: 'The {half} half holds on to {subject} by up to {measured}; {volume} in all, looked at every {cell}.',
    remedy:
      'Turn or sink the master differently (`discwright inspect --lie` ranks the ways), or set `fixture.relieve` to true.',
  },
  'release.relieved': {
    severity: 'note',
    means:
      'Undercuts of a rigid half are filled so that the casting can leave; the casting carries that metal.',
    formula: 'volume between cavity and parting surface that is filled up; greatest height over 0.05 mm',
    source: 'geometry, in columns; 0.05 mm is our own choice',
    values: { measured: 'mm', limit: 'mm', volume: 'mm3' },
    says: 'Filling the undercuts of {subject} adds {volume} to its casting, up to {measured} high.',
    remedy: 'File it off the castings, or turn or sink the master differently.',
  },
  'support.free': {
    severity: 'warn',
    means:
      'A thin bit of the master has nothing under it: it bends when the half is pressed. What has nothing over it is a note only: rubber flows in as the upper half is pressed.',
    formula:
      'free length within the master over mean thickness (volume over area); against `limits.slenderness`. A rule of shape, not of bending stress: rubber that flows presses alike on all sides, and how much harder it presses on one of them while it begins to flow nobody has measured',
    source:
      'free length: Zhao, Math. Comp. 74 (2005) 603-627; starting limit of 4 from memory, editable in the plan',
    values: {
      measured: 'times',
      limit: 'times',
      area: 'mm2',
      thickness: 'mm',
      length: 'mm',
      side: ['under', 'over'],
      gap: 'mm',
    },
    says: 'A bit of {subject}, {area} and {thickness} thick, reaches {length} with nothing {side} it, {gap} clear of the plane at most.',
    remedy: 'Name the placement under `supports`, so that it gets a build-up, or sink it deeper.',
  },
});
