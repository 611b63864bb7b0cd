import { codes } from './entry.ts';

const mendIt = 'Mend the master in the program it was made in and export it again.';

export const repairCodes = codes({
  'repair.empty': {
    severity: 'stop',
    means: 'A master file holds no faces, or none that cover anything.',
    remedy: 'Export the master again with its surface as triangles.',
  },
  'repair.too-large': {
    severity: 'stop',
    means: 'A master has more triangles than can be worked on in memory.',
    formula: 'number of triangles; at most 4 million',
    source: 'measured memory: about 1.5 GB',
    remedy: 'Reduce the number of triangles before exporting; the eye sees no change below 0.02 mm.',
  },
  'repair.not-a-number': {
    severity: 'stop',
    means: 'A master has points that are not finite numbers, or faces that name points it does not have.',
    remedy: 'Export the master again.',
  },
  'repair.unit-guessed': {
    severity: 'note',
    means: 'The file does not say its unit; the one that makes its size plausible for a part was taken.',
    formula: 'longest side in units of the file: 2 to 1000 mm, 0.2 to 2 in, less m, more micron',
    source: 'common practice, no published source: STL and OBJ name no unit',
    remedy: 'Name the unit beside the file in the plan if it is another.',
  },
  'repair.size-doubtful': {
    severity: 'warn',
    means: 'A master is far smaller or larger than any part that is spun in a disc mold.',
    formula: 'longest side; 1 to 1000 mm',
    source: 'from memory',
    remedy: 'Name the unit the file is in, or scale the master.',
  },
  'repair.size-absurd': {
    severity: 'stop',
    means: 'A master is so small or so large that its shape cannot be worked with in millimeters.',
    formula: 'longest side; 0.05 to 10 000 mm',
    source: 'from memory',
    remedy: 'Name the unit the file is in, or scale the master.',
  },
  'repair.recentered': {
    severity: 'note',
    means: 'A master lay so far from its origin that coordinates lose their fine digits; it was moved back.',
    formula: 'greatest distance from the origin; over 512 mm',
    source: 'step of 32-bit numbers (IEEE 754): 6e-5 mm there',
    remedy: 'Nothing to do: placements go by the middle of the silhouette, not by the file origin.',
  },
  'repair.coarse': {
    severity: 'warn',
    means: 'A master lay so far from its origin that the file has already rounded its shape.',
    formula: 'step of 32-bit numbers at the greatest distance from the origin; over 0.005 mm',
    source: 'IEEE 754',
    remedy: 'Move the master to the origin in the program it was made in and export it again.',
  },
  'repair.points-joined': {
    severity: 'note',
    means: 'Points on open edges that nearly met were joined.',
    remedy: 'Nothing to do unless the place is wrong.',
  },
  'repair.faces-dropped': {
    severity: 'note',
    means: 'Faces without area, doubled faces or walls between touching bodies were left out.',
    remedy: 'Nothing to do unless the place is wrong.',
  },
  'repair.faces-turned': {
    severity: 'warn',
    means: 'Some faces looked the other way than their neighbors and were turned over.',
    remedy: 'Look at the place; mend the master in its own program if the shape matters there.',
  },
  'repair.inside-out': {
    severity: 'warn',
    means: 'A body was inside out (its faces looked inward) and was turned.',
    formula: 'signed volume of the body under 0, and no body round it',
    source: 'divergence theorem',
    remedy: 'Check that it is a body and not a cavity that was meant.',
  },
  'repair.holes-closed': {
    severity: 'warn',
    means: 'A master had open edges; its small holes were closed.',
    remedy: 'Look at the closed places; mend the master in its own program if the shape matters there.',
  },
  'repair.edges-split': {
    severity: 'note',
    means: 'Faces of several sheets met in one edge; the sheets were told apart there.',
    remedy: 'Nothing to do unless the place is wrong.',
  },
  'repair.slivers-turned': {
    severity: 'note',
    means: 'Faces with all corners on one line were joined with their neighbors; no point moved.',
    remedy: 'Nothing to do.',
  },
  'repair.shells-united': {
    severity: 'warn',
    means: 'A master was made of shells that overlap; they were united into one skin.',
    formula: 'sum of the volumes of the shells less that of their union',
    source: 'boolean union',
    remedy: 'Look whether the united shape is the one meant.',
  },
  'repair.crossings-cut': {
    severity: 'warn',
    means:
      'In a few small places a master crossed itself; the faces there were cut out and the gaps spanned.',
    remedy: 'Look at the places; mend the master in its own program if the shape matters there.',
  },
  'repair.specks-dropped': {
    severity: 'note',
    means: 'Shells that enclose next to nothing were left out.',
    remedy: 'Nothing to do unless the place is wrong.',
  },
  'repair.remeshed': {
    severity: 'warn',
    means: 'A master could not be mended face by face; its surface was made anew, which rounds fine detail.',
    formula: 'surface on which the generalized winding number is one half',
    source: 'Jacobson, Kavan and Sorkine-Hornung, Robust inside-outside segmentation, 2013',
    remedy: `Compare the figures; choose a shorter edge length, or: ${mendIt.toLowerCase()}`,
  },
  'repair.not-solid': {
    severity: 'stop',
    means: 'A master does not enclose a volume and no repair gave one.',
    remedy: mendIt,
  },
  'repair.flat': {
    severity: 'stop',
    means: 'A master has no thickness.',
    formula: 'extent along one axis, or volume over area, is nothing',
    source: 'geometry',
    remedy: 'Give it a thickness, or describe it as a stand-in by its outline and heights.',
  },
  'repair.several-bodies': {
    severity: 'note',
    means: 'A master is made of several separate bodies, which are placed and cast together.',
    remedy: 'Split the file if the bodies are to be placed one by one.',
  },
  'repair.cavity': {
    severity: 'note',
    means: 'A master has a closed cavity inside, which no two-part mold can form.',
    formula: 'signed volume of a shell under 0, within a body',
    source: 'divergence theorem',
    remedy: 'Reckon with a solid casting there: it is heavier than the mesh says.',
  },
});
