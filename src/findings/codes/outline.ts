import { codes } from './entry.ts';

/** The file as the plan names it; the subject may be the master that is made of it. */
const file = { file: 'name' } as const;
const makesIt = 'that makes it {width} x {height}';

export const outlineCodes = codes({
  'outline.unreadable': {
    severity: 'stop',
    means: 'An outline file cannot be read as an SVG or DXF drawing.',
    values: {
      ...file,
      /** A piece of the file, or what the parser says of it. */
      'text?': 'name',
      'fault?': 'name',
      'line?': 'count',
      'element?': 'name',
      'attribute?': 'name',
      'limit?': 'count',
    },
    says: {
      xml: '{file}: it is not well-formed XML ({fault}).',
      'no-svg': '{file}: it holds no svg element.',
      root: '{file}: its outermost element is {element}, not svg.',
      transform: '{file}: its transform "{text}" makes no sense.',
      deep: '{file}: it nests elements more than {limit, number} deep.',
      elements: '{file}: it has more than {limit, number} elements; leave in it what belongs to the outline.',
      uses: '{file}: it uses shapes again more than {limit, number} times.',
      'no-page': '{file}: it holds a page within a page, and neither has a size.',
      origin: '{file}: it holds a transform about an origin of its own.',
      'share-of-none': '{file}: a {element} has the {attribute} "{text}" of a page without a size.',
      length:
        '{file}: a {element} has the {attribute} "{text}", which is no length in mm, cm, in, pt, pc or px.',
      points: '{file}: a {element} has points that are no numbers.',
      path: '{file}: it holds a path that cannot be read ({fault}).',
      command: '{file}: a path holds an unknown command.',
      bounds: '{file}: a path leaves all bounds.',
      'binary-dxf': '{file}: it is a binary DXF; save it as ASCII DXF.',
      'cut-off': '{file}: it is cut off, for it does not end with EOF.',
      'no-entities': '{file}: it has no ENTITIES section.',
      'group-code': '{file}: line {line} should be a group code, but is "{text}".',
    },
    remedy: 'Save the drawing again as SVG or as ASCII DXF.',
  },
  'outline.too-large': {
    severity: 'stop',
    means: 'An outline file is far larger than a drawing of one part can sensibly be, so it was not read.',
    values: { ...file, measured: 'bytes', limit: 'bytes' },
    says: '{file}: the outline file has {measured}, more than {limit}.',
    remedy: 'Check that the file named is the outline, and leave pictures out of it.',
  },
  'outline.too-many-points': {
    severity: 'stop',
    means: 'The paths of a drawing have far more points than the outline of one part needs.',
    formula:
      'points of all paths, curves as chords 0.01 mm off; over 20 000; corners of the outlines they join to; over 10 000',
    source: 'our own choice: with so many an outline is still checked within seconds',
    values: { ...file, limit: 'count', what: ['points', 'corners'] },
    says: '{file}: its {what, select, points {paths have} other {outlines have}} more than {limit, number} {what}.',
    remedy: 'Simplify the paths in the drawing program, and leave out what is not the outline.',
  },
  'outline.empty': {
    severity: 'stop',
    means: 'An outline file holds no closed path.',
    values: file,
    says: '{file}: there is no closed path with an inside.',
    remedy: 'Draw the outline as one closed path; turn text into paths first.',
  },
  'outline.crosses': {
    severity: 'stop',
    means: 'An outline crosses itself or another outline, so that inside and outside cannot be told apart.',
    formula: 'segments of the outlines meet other than at shared ends',
    source: 'geometry',
    values: { ...file, crossing: 'point' },
    says: '{file}: the outline crosses or touches itself at {crossing}.',
    remedy: 'Redraw the outline at the place named so that it does not cross.',
  },
  'outline.gap-closed': {
    severity: 'warn',
    means: 'An outline did not quite close; its ends were joined by a straight line.',
    formula: 'gap between the ends of a path; up to 1 mm is closed',
    source: 'our own choice of 1 mm',
    values: { ...file, limit: 'mm' },
    says: '{file}: a path with gaps of up to {limit} was closed.',
    remedy: 'Look at the place named; join the ends in the drawing if the shape matters there.',
  },
  'outline.open-path': {
    severity: 'warn',
    means: 'A path that does not close was left out of the outline.',
    formula: 'gap between the ends of a path; over 1 mm',
    source: 'our own choice of 1 mm',
    values: { ...file, measured: 'mm', limit: 'mm' },
    says: '{file}: a path is open by {measured} and was left out.',
    remedy: 'Close the path in the drawing if it belongs to the outline, or delete it.',
  },
  'outline.left-out': {
    severity: 'warn',
    means:
      'A drawing holds things that are not read as outlines, such as text, splines, inserted blocks or shapes that are not painted.',
    values: {
      ...file,
      /** Each with how many there are: `3 TEXT`. */
      kinds: 'names',
    },
    says: '{file}: {kinds} were not read.',
    remedy: 'Turn them into plain paths or polylines with a stroke if they belong to the outline.',
  },
  'outline.unit-assumed': {
    severity: 'warn',
    means: 'A drawing does not say what its numbers mean.',
    values: { ...file, width: 'mm', height: 'mm' },
    says: {
      'no-size': `{file}: it gives no size in mm or inches, so 96 units were taken as one inch; ${makesIt}.`,
      'no-unit': `{file}: it does not say its unit, so its numbers were taken as mm; ${makesIt}.`,
    },
    remedy: 'Compare the size reported with the part; save the drawing with its unit if it is wrong.',
  },
  'outline.size': {
    severity: 'warn',
    means: 'An outline is larger than any disc or smaller than anything that can be cast.',
    values: { ...file, measured: 'mm', width: 'mm', height: 'mm' },
    says: '{file}: the outline is {width} x {height}.',
    remedy: 'Check the unit the drawing was saved in.',
  },
});
