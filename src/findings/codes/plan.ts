import { codes } from './entry.ts';

export const planCodes = codes({
  'plan.unreadable': {
    severity: 'stop',
    means: 'The plan file cannot be read as YAML 1.2 text.',
    remedy: 'Correct the place named.',
  },
  'plan.too-large': {
    severity: 'stop',
    means: 'The plan file is far larger than a plan can sensibly be, so it was not read.',
    remedy: 'Check that the file named is the plan; meshes and outlines belong in files of their own.',
  },
  'plan.not-utf8': {
    severity: 'stop',
    means: 'The plan file is not UTF-8 text.',
    remedy: 'Save it again as UTF-8 text in your editor.',
  },
  'plan.empty': {
    severity: 'stop',
    means: 'The plan file holds nothing but blank lines or comments.',
    remedy: 'Write at least `process` and `disc`; `discwright new` writes a plan to start from.',
  },
  'plan.tab': {
    severity: 'stop',
    means: 'A line of the plan is indented with a tab, which YAML does not allow.',
    remedy: 'Indent with spaces; most editors can be told to put spaces when Tab is pressed.',
  },
  'plan.several-documents': {
    severity: 'stop',
    means: 'The plan file holds more than one YAML document.',
    remedy: 'Keep one plan in one file: remove the line that begins the second document.',
  },
  'plan.too-deep': {
    severity: 'stop',
    means: 'The plan is nested far deeper than any plan needs, or an alias holds itself.',
    remedy: 'Take out the nesting at the place named.',
  },
  'plan.too-much': {
    severity: 'stop',
    means: 'The plan has far more entries than a plan needs, counting what aliases repeat.',
    remedy: 'Take out entries or aliases; a ring places many masters in one entry.',
  },
  'plan.alias': {
    severity: 'stop',
    means: 'An alias such as `*a` names no anchor `&a` written before it.',
    remedy: 'Correct the name, or put text that begins with * in quotes.',
  },
  'plan.duplicate-key': {
    severity: 'stop',
    means: 'The same name is given twice in one section, so one of the two would be lost.',
    remedy: 'Keep one of the two.',
  },
  'plan.unknown-key': {
    severity: 'stop',
    means: 'The plan has a name this program does not know; ignoring it could spoil a mold.',
    remedy: 'Correct or remove the name.',
  },
  'plan.missing': {
    severity: 'stop',
    means: 'Something the plan must say is not there.',
    remedy: 'Add it.',
  },
  'plan.wrong-kind': {
    severity: 'stop',
    means: 'The plan gives one kind of thing (a list, a section, text, a number) where another belongs.',
    remedy: 'Write it as said.',
  },
  'plan.wrong-word': {
    severity: 'stop',
    means: 'The plan gives a word where only certain others are understood.',
    remedy: 'Take one of the words named.',
  },
  'plan.quantity': {
    severity: 'stop',
    means: 'A quantity in the plan cannot be read as a number with a unit.',
    remedy: 'Write it like the examples named.',
  },
  'plan.wrong-unit': {
    severity: 'stop',
    means: 'A quantity in the plan has a unit that does not fit the field, or lacks the unit it needs.',
    remedy: 'Take one of the units named.',
  },
  'plan.decimal-comma': {
    severity: 'stop',
    means: 'A number in the plan is written with a comma.',
    remedy: 'Write a decimal point, and no mark between thousands.',
  },
  'plan.out-of-range': {
    severity: 'stop',
    means: 'A value in the plan lies outside what makes sense for the field.',
    remedy: 'Give a value within the range named.',
  },
  'plan.choose-one': {
    severity: 'stop',
    means: 'The plan says the same thing in two ways, or gives a set of fields that do not belong together.',
    remedy: 'Keep one of the ways.',
  },
  'plan.bad-id': {
    severity: 'stop',
    means: 'A name given by the user has letters that cannot stand in file names and reports.',
    remedy: 'Use letters, digits and dashes, beginning with a letter or digit.',
  },
  'plan.duplicate-id': {
    severity: 'stop',
    means: 'Two things in the plan have the same name.',
    remedy: 'Give one of them another `id`.',
  },
  'plan.unknown-id': {
    severity: 'stop',
    means: 'The plan refers to a master or placement that it does not have.',
    remedy: 'Correct the name, or add what it names.',
  },
  'plan.more-faults': {
    severity: 'stop',
    means: 'The plan has so many faults that only the first hundred are listed.',
    remedy: 'Correct those listed and read it again; check that the file is a plan at all.',
  },
});
