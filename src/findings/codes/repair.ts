import { codes } from './entry.ts';

const repairIt = 'Mend the master in the program it was made in and export it again.';

const size = { measured: 'mm', limit: 'mm', least: 'mm', most: 'mm' } as const;
const sizeSays = "The master's longest side is {measured}; parts for a disc mold are {least} to {most} long.";

const addedFaces = '{added, plural, one {# face} other {# faces}}';

/** Why a skin cannot stay as it is. */
const skin = {
  'open?': 'count',
  'crowded?': 'count',
  /** What the kernel says. */
  'fault?': 'name',
  /** Of how many upright lines, and the volume (mm3) that is enclosed more or less than once. */
  'wrong?': 'count',
  'columns?': 'count',
  'wrongVolume?': 'mm3',
} as const;
const open =
  'After mending, {open, number} of its edges are open and {crowded, number} join more than two faces.';
const refused = 'The kernel refuses it ({fault}).';
const crosses =
  'Its surface crosses itself: {wrong, number} of {columns, number} upright lines find it inside more or less than once, {wrongVolume} in all.';
const anew =
  'Its surface was made anew with edges of {edge}: volume {volumeBefore} -> {volumeAfter}, area {areaBefore} -> {areaAfter}; the old outer surface lies within {kept} (rms {keptRms}) of the new one, the new one within {added} of the old.';
const anewToo =
  '{anew, select, strayed {Made anew, it would stray {strayed} from the file.} refused {Made anew, it is refused too ({anewFault}).} crosses {Made anew, its surface crosses itself, too: {anewWrong, number} of {anewColumns, number} upright lines find it inside more or less than once, {anewVolume} in all.} other {Nothing is inside it.}}';
const tooLong =
  'Made anew with edges of {edge} it takes {takes, select, cells {{measured, number} cells; at most {limit, number} are made} other {looking at its faces more than {limit, number} times}}.';

export const repairCodes = codes({
  'repair.empty': {
    severity: 'stop',
    means: 'A master file holds no faces, or none that cover anything.',
    values: { 'measured?': 'count' },
    says: {
      faces: 'The file holds no faces.',
      extent: 'All points of the file are one.',
      area: 'No face of it has any area.',
    },
    remedy: 'Export the master again with its surface as triangles.',
  },
  'repair.too-large': {
    severity: 'stop',
    means: 'A master has more triangles than can be worked on in memory.',
    formula: 'number of triangles; at most 4 million',
    source: 'measured memory: about 1.5 GB',
    values: { measured: 'count', limit: 'count' },
    says: 'The master has {measured, number} triangles; at most {limit, number} are taken in.',
    remedy: 'Reduce the number of triangles before exporting; the eye sees no change below 0.02 mm.',
  },
  'repair.not-a-number': {
    severity: 'stop',
    means: 'A master has points that are not finite numbers, or faces that name points it does not have.',
    values: { face: 'count' },
    says: 'Face {face, number} has no usable corners.',
    remedy: 'Export the master again.',
  },
  'repair.unit-guessed': {
    severity: 'note',
    means: 'The file does not say its unit; the one that makes its size plausible for a part was taken.',
    formula: 'longest side in units of the file: 2 to 1000 mm, 0.2 to 2 in, less m, more micron',
    source: 'common practice, no published source: STL and OBJ name no unit',
    values: { measured: 'mm', unit: ['micron', 'mm', 'cm', 'm', 'in', 'ft'], x: 'mm', y: 'mm', z: 'mm' },
    says: 'The file does not say its unit; taken as {unit}, which makes the master {x} x {y} x {z}.',
    remedy: 'Name the unit beside the file in the plan if it is another.',
  },
  'repair.size-doubtful': {
    severity: 'warn',
    means: 'A master is far smaller or larger than any part that is spun in a disc mold.',
    formula: 'longest side; 1 to 1000 mm',
    source: 'from memory',
    values: size,
    says: sizeSays,
    remedy: 'Name the unit the file is in, or scale the master.',
  },
  'repair.size-absurd': {
    severity: 'stop',
    means: 'A master is so small or so large that its shape cannot be worked with in millimeters.',
    formula: 'longest side; 0.05 to 10 000 mm',
    source: 'from memory',
    values: size,
    says: sizeSays,
    remedy: 'Name the unit the file is in, or scale the master.',
  },
  'repair.recentered': {
    severity: 'note',
    means: 'A master lay so far from its origin that coordinates lose their fine digits; it was moved back.',
    formula: 'greatest distance from the origin; over 512 mm',
    source: 'step of 32-bit numbers (IEEE 754): 6e-5 mm there',
    values: { measured: 'mm', limit: 'mm', moved: 'point' },
    says: 'The master reaches {measured} from its origin; it was moved by {moved}.',
    remedy: 'Nothing to do: placements go by the middle of the silhouette, not by the file origin.',
  },
  'repair.coarse': {
    severity: 'warn',
    means: 'A master lay so far from its origin that the file has already rounded its shape.',
    formula: 'step of 32-bit numbers at the greatest distance from the origin; over 0.005 mm',
    source: 'IEEE 754',
    values: { measured: 'mm', limit: 'mm' },
    says: 'So far from its origin the file can only tell points {measured} apart.',
    remedy: 'Move the master to the origin in the program it was made in and export it again.',
  },
  'repair.points-joined': {
    severity: 'note',
    means: 'Points on open edges that nearly met were joined.',
    values: { measured: 'count', size: 'mm' },
    says: '{measured, plural, one {# point on an open edge was} other {# points on open edges were}} moved by up to {size} to meet {measured, plural, one {its neighbor} other {their neighbors}}.',
    remedy: 'Nothing to do unless the place is wrong.',
  },
  'repair.faces-dropped': {
    severity: 'note',
    means: 'Faces without area, doubled faces or walls between touching bodies were left out.',
    values: { measured: 'count', collapsed: 'count', doubled: 'count' },
    says: '{measured, plural, one {# face was} other {# faces were}} left out: {collapsed, number} without area, {doubled, number} doubled.',
    remedy: 'Nothing to do unless the place is wrong.',
  },
  'repair.faces-turned': {
    severity: 'warn',
    means: 'Some faces looked the other way than their neighbors and were turned over.',
    values: { measured: 'count' },
    says: '{measured, plural, one {# face looked the other way than its neighbors and was} other {# faces looked the other way than their neighbors and were}} turned over.',
    remedy: 'Look at the place; mend the master in its own program if the shape matters there.',
  },
  'repair.inside-out': {
    severity: 'warn',
    means: 'A body was inside out (its faces looked inward) and was turned.',
    formula: 'signed volume of the body under 0, and no body round it',
    source: 'divergence theorem',
    values: { measured: 'count' },
    says: '{measured, plural, one {# body was inside out and was} other {# bodies were inside out and were}} turned.',
    remedy: 'Check that it is a body and not a cavity that was meant.',
  },
  'repair.holes-closed': {
    severity: 'warn',
    means: 'A master had open edges; its small holes were closed.',
    values: {
      measured: 'count',
      openEdges: 'count',
      added: 'count',
      area: 'mm2',
      widest: 'mm',
      /** From any edge of the old surface. */
      farthest: 'mm',
    },
    says: `{measured, plural, one {# hole} other {# holes}} ({openEdges, plural, one {# open edge} other {# open edges}} in the file) {measured, plural, one {was} other {were}} closed with ${addedFaces} over {area}; {measured, plural, one {it} other {the widest}} is {widest} across and the new faces lie up to {farthest} from any edge of the old.`,
    remedy: 'Look at the closed places; mend the master in its own program if the shape matters there.',
  },
  'repair.edges-split': {
    severity: 'note',
    means: 'Faces of several sheets met in one edge; the sheets were told apart there.',
    values: { measured: 'count' },
    says: '{measured, plural, one {# edge} other {# edges}} joined more than two faces; the sheets that met there were told apart.',
    remedy: 'Nothing to do unless the place is wrong.',
  },
  'repair.slivers-turned': {
    severity: 'note',
    means: 'Faces with all corners on one line were joined with their neighbors; no point moved.',
    values: { measured: 'count' },
    says: '{measured, plural, one {# face with all corners on one line was joined with its neighbors} other {# faces with all corners on one line were joined with their neighbors}}.',
    remedy: 'Nothing to do.',
  },
  'repair.shells-united': {
    severity: 'warn',
    means: 'A master was made of shells that overlap; they were united into one skin.',
    formula: 'sum of the volumes of the shells less that of their union',
    source: 'boolean union',
    values: { measured: 'count', overlap: 'mm3' },
    says: '{measured, plural, one {# shell that overlaps} other {# shells that overlap}} by {overlap} {measured, plural, one {was} other {were}} united into one skin.',
    remedy: 'Look whether the united shape is the one meant.',
  },
  'repair.crossings-cut': {
    severity: 'warn',
    means:
      'In a few small places a master crossed itself; the faces there were cut out and the gaps spanned.',
    values: {
      measured: 'count',
      added: 'count',
      area: 'mm2',
      /** From the rims of the gaps. */
      farthest: 'mm',
    },
    says: `{measured, plural, one {# face where the surface crosses itself was} other {# faces where the surface crosses itself were}} cut out and the gaps spanned with ${addedFaces} over {area}, no farther than {farthest} from the rims.`,
    remedy: 'Look at the places; mend the master in its own program if the shape matters there.',
  },
  'repair.crossings-drawn-apart': {
    severity: 'note',
    means:
      'In a few small places faces of a master went through one another; the points there were moved apart.',
    values: { measured: 'count', farthest: 'mm' },
    says: '{measured, plural, one {# point where faces went through one another was} other {# points where faces went through one another were}} moved, by {farthest} at most.',
    remedy: 'Nothing to do unless the place is wrong.',
  },
  'repair.crossings-left': {
    severity: 'warn',
    means:
      'Faces of a master go through one another and could not be parted; solids cut by it may do so too.',
    formula: 'an edge meets a face it has no corner in common with, float32 coordinates, exact signs',
    source:
      'Shewchuk, Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates, 1997',
    values: { measured: 'count', deepest: 'mm' },
    says: '{measured, plural, one {# pair of its faces goes} other {# pairs of its faces go}} through one another, {deepest} deep at most, and could not be parted without changing its shape.',
    remedy: repairIt,
  },
  'repair.coarsened': {
    severity: 'warn',
    means: 'The masters of a plan have more triangles than there is memory for; they were made coarser.',
    formula:
      'triangles of each master times its placements, 640 bytes each, at most 3 GiB; moved by 2.7 times the tolerance of simplifying',
    source:
      'measured: memory of the kernel at its greatest while halves are cut, and how far simplifying moves a surface',
    values: { measured: 'count', left: 'count', error: 'mm', wanted: 'count', limit: 'count' },
    says: 'All placements together have {wanted, number} triangles, and there is memory for {limit, number}: the master was made coarser, from {measured, number} to {left, number} triangles; its surface moved by {error} at most.',
    remedy:
      'Nothing to do if that error is less than is seen; else place fewer, or set `limits: coarsening` to what may be moved.',
  },
  'repair.memory': {
    severity: 'stop',
    means:
      'The masters of a plan have more triangles than there is memory for, even as coarse as they may be made.',
    formula: 'triangles of each master times its placements, 640 bytes each, at most 3 GiB',
    source: 'measured: memory of the kernel at its greatest while halves are cut',
    values: { measured: 'count', limit: 'count', left: 'count', allowed: 'mm', times: 'count' },
    says: 'All placements together have {measured, number} triangles, and there is memory for {limit, number}; made coarser by {allowed}, the most that is allowed, they have {left, number}. This master, placed {times, plural, one {once} other {# times}}, has the most.',
    remedy:
      'Reduce the number of triangles in the program the masters were made in, place fewer of them, or set `limits: coarsening` higher.',
  },
  'repair.specks-dropped': {
    severity: 'note',
    means: 'Shells that enclose next to nothing were left out.',
    values: { measured: 'count' },
    says: '{measured, plural, one {# shell that encloses next to nothing was} other {# shells that enclose next to nothing were}} left out.',
    remedy: 'Nothing to do unless the place is wrong.',
  },
  'repair.remeshed': {
    severity: 'warn',
    means: 'A master could not be mended face by face; its surface was made anew, which rounds fine detail.',
    formula: 'surface on which the generalized winding number is one half',
    source: 'Jacobson, Kavan and Sorkine-Hornung, Robust inside-outside segmentation, 2013',
    values: {
      ...skin,
      measured: 'mm',
      edge: 'mm',
      volumeBefore: 'mm3',
      volumeAfter: 'mm3',
      areaBefore: 'mm2',
      areaAfter: 'mm2',
      /** Of the old outer surface from the new one: the farthest, and the root of the mean square. */
      kept: 'mm',
      keptRms: 'mm',
      /** Of the new surface from the old. */
      added: 'mm',
    },
    says: {
      open: `${open} ${anew}`,
      refused: `${refused} ${anew}`,
      crosses: `${crosses} ${anew}`,
    },
    remedy: `Compare the figures; choose a shorter edge length, or ${repairIt.toLowerCase()}`,
  },
  'repair.not-solid': {
    severity: 'stop',
    means: 'A master does not enclose a volume and no repair gave one.',
    values: {
      ...skin,
      measured: 'count',
      /** What came of a surface made anew. */
      anew: ['nothing', 'strayed', 'refused', 'crosses'],
      'strayed?': 'mm',
      'anewFault?': 'name',
      'anewWrong?': 'count',
      'anewColumns?': 'count',
      'anewVolume?': 'mm3',
    },
    says: {
      open: `${open} ${anewToo}`,
      refused: `${refused} ${anewToo}`,
      crosses: `${crosses} ${anewToo}`,
    },
    remedy: repairIt,
  },
  'repair.remesh-too-long': {
    severity: 'stop',
    means:
      'A master does not enclose a volume, and making its surface anew would take more work than a master may: its faces are a heap without an inside, or the edge length asked for is far too short.',
    formula:
      'cells of the edge length in the box of the master, at most 8 million; faces asked, at most 400 million',
    source: 'our own choice: about 10 s; scans with a third of their faces missing ask 200 million at most',
    values: { ...skin, measured: 'count', limit: 'count', edge: 'mm', takes: ['cells', 'steps'] },
    says: {
      open: `${open} ${tooLong}`,
      refused: `${refused} ${tooLong}`,
      crosses: `${crosses} ${tooLong}`,
    },
    remedy:
      '{takes, select, cells {Ask for a longer edge.} other {Look whether it is a body at all; if it is, mend it in the program it was made in and export it again, or ask for a longer edge.}}',
  },
  'repair.flat': {
    severity: 'stop',
    means: 'A master has no thickness.',
    formula: 'extent along one axis, or volume over area, is nothing',
    source: 'geometry',
    values: { 'measured?': 'count', 'axis?': ['x', 'y', 'z'] },
    says: {
      axis: 'The master has no extent along {axis}.',
      volume: 'The master encloses no volume: it has no thickness.',
    },
    remedy: 'Give it a thickness, or describe it as a stand-in by its outline and heights.',
  },
  'repair.several-bodies': {
    severity: 'note',
    means: 'A master is made of several separate bodies, which are placed and cast together.',
    values: { measured: 'count' },
    says: 'The master is made of {measured, number} separate bodies.',
    remedy: 'Split the file if the bodies are to be placed one by one.',
  },
  'repair.cavity': {
    severity: 'note',
    means: 'A master has a closed cavity inside, which no two-part mold can form.',
    formula: 'signed volume of a shell under 0, within a body',
    source: 'divergence theorem',
    values: { measured: 'count' },
    says: 'The master has {measured, plural, one {# closed cavity} other {# closed cavities}} inside.',
    remedy: 'Reckon with a solid casting there: it is heavier than the mesh says.',
  },
});
