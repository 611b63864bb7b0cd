import { codes } from './entry.ts';

export const layoutCodes = codes({
  'layout.no-file': {
    severity: 'stop',
    means: 'A file the plan names cannot be opened.',
    values: { fault: 'name' },
    says: 'Master {subject}: {fault}.',
    remedy: "Correct the path; it counts from the plan's own folder.",
  },
  'layout.outside-folder': {
    severity: 'note',
    means: "A master is read from outside the plan's folder, so the plan alone does not carry it along.",
    values: { file: 'name' },
    says: "Master {subject} is read from outside the plan's folder: {file}.",
    remedy: 'Copy the file beside the plan if the plan is to travel.',
  },
  'layout.outside-disc': {
    severity: 'stop',
    means: 'A tab or notch reaches past the rim of the disc.',
    formula: 'radius of the outermost point less that of the disc; over 0',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', beyond: 'mm' },
    says: '{subject} reaches {beyond} past the rim.',
    remedy: 'Move it inward or choose a larger disc.',
  },
  'layout.unknown-nut': {
    severity: 'stop',
    means: 'A boss names a cap nut or hexagon nut the tables do not hold.',
    formula: 'size is in the table',
    source: 'DIN 1587, SAE J483a, ISO 4032 and ASME B18.2.2, each row with its source',
    values: { nut: ['cap nut', 'hexagon nut'], size: 'name' },
    says: 'There is no {nut} of size {size} in the tables.',
    remedy:
      'Use a size of DIN 1587 (M4 to M16) or of the inch table (1/4, 5/16, 3/8), for a hexagon one of ISO 4032 (M4 to M20) or ASME B18.2.2 (1/4, 5/16, 3/8, 1/2) or its width across flats, or a dome or cone.',
  },
  'layout.boss-pointed': {
    severity: 'stop',
    means: 'The flats of a hexagon boss lean so far, or it is so high, that hardly a top is left.',
    formula: 'top / foot = 1 - 2 h tan(draft) / s',
    source: 'geometry; at least 30 % is our own limit, no published source',
    values: { measured: 'ratio', limit: 'ratio' },
    says: {
      narrow:
        'The flats of the hexagon {subject} lean so far that its top is {measured} as wide as its foot.',
      closed: 'The flats of the hexagon {subject} lean so far that they meet below its top.',
    },
    remedy: 'Make it lower, or its draft less.',
  },
  'layout.unknown-thread': {
    severity: 'stop',
    means: 'The puller of the sprue form names a screw the tables do not hold.',
    values: { screw: 'name' },
    says: {
      thread: 'The tables have no thread {screw}.',
      insert: 'The tables have no pocket of a heat-set insert for {screw}.',
    },
    remedy: 'Use M3 to M16 of ISO 261, or 1/4 to 1/2 in UNC or UNF; inserts go from M3 to M8 and 1/4-20.',
    formula: 'thread is in the table',
    source: 'ISO 261, ASME B1.1; insert pockets from memory',
  },
  'layout.sprue-thin': {
    severity: 'warn',
    means: 'Puller hole, flats or vent leave too little of the sprue form, or cut nothing of it.',
    values: { measured: 'mm', limit: 'mm', 'hole?': 'mm' },
    says: {
      flats: 'The grip is {measured} across, so flats of {limit} cut nothing.',
      round: 'The puller hole of {hole} leaves {measured} of the grip round it.',
      under: 'The puller hole of {hole} leaves {measured} under it.',
      grip: 'Flats and vent leave {measured} of the grip.',
    },
    remedy: 'Take a smaller screw, a shallower hole, other flats, or a longer grip.',
    formula: 'at least 2 mm round and under the hole; flats narrower than the grip',
    source: 'common practice, no published source',
  },
  'layout.sunk-under': {
    severity: 'stop',
    means: 'A master lies wholly below or wholly above the parting plane, so one half does not touch it.',
    formula: 'lowest point above, or highest point below, the parting plane',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', side: ['above', 'below'] },
    says: '{subject} lies wholly {side} the parting plane.',
    remedy: 'Give a sink between nothing and the whole height, or `silhouette`.',
  },
  'layout.bosses-meet': {
    severity: 'stop',
    means: 'Two bosses stand in one another: they cannot both be set, and their sockets run together.',
    formula:
      'distance of their centers less the radii of the circles round them, hexagon corners included; under 0',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', other: 'name', by: 'mm' },
    says: '{subject} stands in {other}, by {by}.',
    remedy: 'Move one of them, or leave it out.',
  },
  'layout.over-well': {
    severity: 'stop',
    means: 'A master or boss stands over the well of the sprue form.',
    formula: 'distance of the innermost point from the axis less the radius of the well; under 0',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm' },
    says: '{subject} reaches to {measured} from the axis, over the well of {limit} radius.',
    remedy: 'Move it outward.',
  },
  'layout.no-channel': {
    severity: 'warn',
    means: 'No straight gate or vent can be drawn for a placement: the line along the radius misses it.',
    formula: 'the radius through the middle of the placement meets its cavity',
    source: 'geometry; channels along the radius are common practice, no published source',
    values: { kind: ['runner', 'gate', 'vent'] },
    says: {
      'no-sprue':
        '{kind, select, runner {No runner can be drawn} other {No straight {kind} can be drawn to {subject}}}: the plan has no sprue.',
      missed: 'No straight {kind} can be drawn to {subject}: the radius through its middle misses it.',
    },
    remedy:
      'Turn or move the placement so that the radius through its middle crosses it, or cut the channel by hand.',
  },
  'layout.too-fine': {
    severity: 'note',
    means: 'The parting surface was computed on a coarser grid than asked, to keep within memory.',
    formula: 'nodes of the grid over the disc; at most 25 million',
    source: 'measured memory',
    values: { measured: 'mm', limit: 'mm' },
    says: 'The parting surface was computed on cells of {measured} instead of {limit}.',
    remedy: 'Ask for a coarser cell, or a smaller disc, to silence this.',
  },
});
