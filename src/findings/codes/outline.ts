import { codes } from './entry.ts';

export const outlineCodes = codes({
  'outline.unreadable': {
    severity: 'stop',
    means: 'An outline file cannot be read as an SVG or DXF drawing.',
    remedy: 'Save the drawing again as SVG or as ASCII DXF.',
  },
  'outline.too-large': {
    severity: 'stop',
    means: 'An outline file is far larger than a drawing of one part can sensibly be, so it was not read.',
    remedy: 'Check that the file named is the outline, and leave pictures out of it.',
  },
  'outline.empty': {
    severity: 'stop',
    means: 'An outline file holds no closed path.',
    remedy: 'Draw the outline as one closed path; turn text into paths first.',
  },
  'outline.crosses': {
    severity: 'stop',
    means: 'An outline crosses itself or another outline, so that inside and outside cannot be told apart.',
    formula: 'segments of the outlines meet other than at shared ends',
    source: 'geometry',
    remedy: 'Redraw the outline at the place named so that it does not cross.',
  },
  'outline.gap-closed': {
    severity: 'warn',
    means: 'An outline did not quite close; its ends were joined by a straight line.',
    formula: 'gap between the ends of a path; up to 1 mm is closed',
    source: 'our own choice of 1 mm',
    remedy: 'Look at the place named; join the ends in the drawing if the shape matters there.',
  },
  'outline.open-path': {
    severity: 'warn',
    means: 'A path that does not close was left out of the outline.',
    formula: 'gap between the ends of a path; over 1 mm',
    source: 'our own choice of 1 mm',
    remedy: 'Close the path in the drawing if it belongs to the outline, or delete it.',
  },
  'outline.left-out': {
    severity: 'warn',
    means:
      'A drawing holds things that are not read as outlines, such as text, splines, inserted blocks or shapes that are not painted.',
    remedy: 'Turn them into plain paths or polylines with a stroke if they belong to the outline.',
  },
  'outline.unit-assumed': {
    severity: 'warn',
    means: 'A drawing does not say what its numbers mean.',
    remedy: 'Compare the size reported with the part; save the drawing with its unit if it is wrong.',
  },
  'outline.size': {
    severity: 'warn',
    means: 'An outline is larger than any disc or smaller than anything that can be cast.',
    remedy: 'Check the unit the drawing was saved in.',
  },
});
