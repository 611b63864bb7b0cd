import { codes } from './entry.ts';

/** What keeps pieces from being laid out on the disc, and what of them was. */
export const arrangeCodes = codes({
  'arrange.no-sprue': {
    severity: 'stop',
    means: 'Pieces are to be arranged on a disc that has no sprue: no gate can begin.',
    says: 'The plan has no sprue, so no gate leads to what is arranged.',
    remedy: 'Give the plan a `sprue`.',
  },
  'arrange.no-ring': {
    severity: 'stop',
    means: 'Between the walls at the well and at the rim nothing is left of the disc to lay pieces on.',
    formula: 'radius of the disc less wall to the rim, well and wall to the well; not over 0',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm' },
    says: 'Pieces would have to lie {limit} and more from the axis and no farther than {measured}: the disc has no room for any.',
    remedy: 'Choose a larger disc or a narrower well.',
  },
  'arrange.too-large': {
    severity: 'stop',
    means: 'A master is larger than the room between well and rim, however it is turned.',
    formula: 'its longest and the largest circle in it, seen from above; over the room',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm' },
    says: {
      long: '{subject} is {measured} long where {limit} lie between the walls at the rim.',
      wide: 'A circle of {measured} lies in {subject}, where {limit} are between well and rim.',
    },
    remedy: 'Choose a larger disc, or leave the master out.',
  },
  'arrange.gates': {
    severity: 'stop',
    means: 'More gates are wanted than find room round the well.',
    formula: 'pi / asin((width + gap) / (2 radius of the well))',
    source: 'geometry: chords round a circle',
    values: { measured: 'count', limit: 'count', width: 'mm' },
    says: 'Round the well no more than {limit, number} gates of {width} find room; {measured, number} are wanted.',
    remedy: 'Choose a larger well, narrower gates, or fewer pieces.',
  },
  'arrange.area': {
    severity: 'stop',
    means: 'The pieces alone, with half a wall round each, take more than all there is between well and rim.',
    formula:
      'sum of areas seen from above, half the wall added round each circle of the same area; over the ring',
    source: 'geometry',
    values: { measured: 'ratio', limit: 'ratio' },
    says: 'What is wanted takes {measured} of the room between well and rim.',
    remedy: 'Choose a larger disc or fewer pieces.',
  },
  'arrange.collide': {
    severity: 'stop',
    means: 'Two placements that stay where they are leave less than the least wall between them.',
    formula: 'least distance of the outlines seen from above',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', other: 'name' },
    says: '{subject} and {other} stay where they are, {measured} from each other.',
    remedy: 'Move one of them, or take away its `locked`.',
  },
  'arrange.left': {
    severity: 'warn',
    means: 'Not all that had to lie found a place in this search. Another may find one.',
    values: { laid: 'count', left: 'count' },
    says: 'Of {subject} {laid, number} were laid and {left, number} found no place.',
    remedy: 'Choose a larger disc, fewer pieces, more effort, or another seed.',
  },
  'arrange.alike': {
    severity: 'note',
    means: 'Two masters have one outline: they are laid as two kinds, though one would do.',
    values: { other: 'name' },
    says: '{subject} and {other} have one outline and are laid as two kinds.',
    remedy: 'Name one master for both if they are the same.',
  },
  'arrange.larger-disc': {
    severity: 'note',
    means: 'A larger disc was found to hold all that is wanted. A smaller one may yet be found.',
    values: { diameter: 'mm' },
    says: 'The next stock disc found to hold all is one of {diameter}.',
    remedy: 'Change `disc.diameter`, or lay fewer.',
  },
});
