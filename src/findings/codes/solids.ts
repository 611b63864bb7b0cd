import { codes } from './entry.ts';

/** Counts of the audit; those that are 0 are not said. */
const faults =
  '{triangles, plural, =0 {no faces} one {# face} other {# faces}}{openEdges, plural, =0 {} one {, # open edge} other {, # open edges}}{crowdedEdges, plural, =0 {} one {, # edge with more than two faces} other {, # edges with more than two faces}}{flippedEdges, plural, =0 {} one {, # edge between faces that are turned opposite ways} other {, # edges between faces that are turned opposite ways}}{degenerate, plural, =0 {} one {, # face without area} other {, # faces without area}}{duplicates, plural, =0 {} one {, # face that is there twice} other {, # faces that are there twice}}{pinchedVertices, plural, =0 {} one {, # vertex where the surface only touches itself} other {, # vertices where the surface only touches itself}}{notFinite, plural, =0 {} one {, # corner that is no finite number} other {, # corners that are no finite number}}{volume, select, none {} other {, a volume of {volume}}}';

const mendMaster =
  'Mend the master in the program it was made in and export it again, or turn or move it by a little: its surface meets itself or the parting surface there.';

export const solidCodes = codes({
  'solid.not-closed': {
    severity: 'stop',
    means: 'A solid came out with open or doubled edges and is withheld.',
    values: {
      measured: 'count',
      limit: 'count',
      title: 'name',
      triangles: 'count',
      openEdges: 'count',
      crowdedEdges: 'count',
      flippedEdges: 'count',
      degenerate: 'count',
      duplicates: 'count',
      pinchedVertices: 'count',
      notFinite: 'count',
      /** Only where there is none, or less than none. */
      'volume?': 'mm3',
      /** The master that was cut in where the fault is. */
      'master?': 'name',
    },
    says: `{title} is not a sound solid and is not written: it has ${faults}{master, select, none {} other {, where master {master} was cut in}}.`,
    remedy: `{master, select, none {Report this with the plan: it is a fault of the program.} other {${mendMaster}}}`,
  },
  'solid.crossed': {
    severity: 'warn',
    means: 'Faces of a solid go through one another by a little; it is written all the same.',
    formula: 'an edge meets a face it has no corner in common with, float32 coordinates, exact signs',
    source:
      'Shewchuk, Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates, 1997',
    values: { measured: 'count', limit: 'count', title: 'name', deepest: 'mm', 'master?': 'name' },
    says: '{measured, plural, one {# pair of faces goes} other {# pairs of faces go}} through one another in the {title}, {deepest} deep at most{master, select, none {} other {, where master {master} was cut in}}.',
    remedy: `{master, select, none {Look at the place in a slicer; if it is filled wrongly there, report this with the plan.} other {${mendMaster}}}`,
  },
  'solid.renamed': {
    severity: 'note',
    means: 'Two solids would have had the same file name; the later one got a number.',
    values: { title: 'name', wanted: 'name' },
    says: 'The {title} is called {subject}, since another one is called {wanted} already.',
    remedy: 'Give the tab, boss or placement another `id` if you want to choose the name.',
  },
  'solid.label-letters': {
    severity: 'note',
    means: 'A label has letters that cannot be engraved; they lose their marks or become a question mark.',
    values: { title: 'name', letters: 'names' },
    says: 'The label of the {title} has the letters {letters}, engraved without marks or as `?`.',
    remedy: 'Write the label with the letters A to Z, digits and common signs.',
    formula: 'every letter is in ASCII',
    source: 'the alphabet of strokes that labels are drawn with',
  },
  'solid.label-left-off': {
    severity: 'note',
    means: 'A label, or its last words, would come out smaller than can be read and is left off.',
    values: { limit: 'mm', title: 'name', words: 'names', 'width?': 'mm', 'height?': 'mm' },
    says: 'Left off the {title} for want of room{width, select, none {} other {, {width} x {height}}}: {words}.',
    remedy: 'Shorten the label, or mark the fixture by hand.',
    formula: 'capitals at least 4.5 mm high in strokes of 0.8 mm',
    source: 'common practice, no published source',
  },
  'solid.failed': {
    severity: 'stop',
    means: 'The geometry kernel could not make a solid.',
    values: { task: 'name', fault: 'name' },
    says: '{task}: {fault}.',
    remedy: 'Look at the placement named: a master may touch or cross something it should not.',
  },
});
