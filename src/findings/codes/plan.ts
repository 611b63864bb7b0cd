import { codes } from './entry.ts';

export const planCodes = codes({
  'plan.unreadable': {
    severity: 'stop',
    means: 'The plan file cannot be read as YAML 1.2 text.',
    values: {
      'text?': 'name',
      'character?': 'name',
      'reason?': 'name',
    },
    says: {
      control: 'A control character ({character}) is no part of a text file.',
      version: 'The file asks for another YAML than 1.2.',
      indented: 'The line `{text}` is not indented like its neighbors, or has a colon in the wrong place.',
      'missing character':
        'A closing quote, bracket or brace, a comma or a colon is missing{text, select, none {} other {, at `{text}`}}.',
      unexpected: 'This was not expected here{text, select, none {} other {, at `{text}`}}.',
      tag: 'A plan has no tags such as `!word`; put text that begins with ! in quotes{text, select, none {} other {, at `{text}`}}.',
      other: '{reason}{text, select, none {} other {, at `{text}`}}.',
    },
    remedy: 'Correct the place named.',
  },
  'plan.too-large': {
    severity: 'stop',
    means: 'The plan file is far larger than a plan can sensibly be, so it was not read.',
    values: { measured: 'bytes', limit: 'bytes' },
    says: 'The file has {measured}; a plan may have at most {limit}.',
    remedy: 'Check that the file named is the plan; meshes and outlines belong in files of their own.',
  },
  'plan.not-utf8': {
    severity: 'stop',
    means: 'The plan file is not UTF-8 text.',
    values: { 'byte?': 'name' },
    says: {
      utf16: 'A plan must be UTF-8 text; the file is UTF-16 text, not UTF-8.',
      byte: 'A plan must be UTF-8 text; the byte {byte} here is not UTF-8 text.',
    },
    remedy: 'Save it again as UTF-8 text in your editor.',
  },
  'plan.empty': {
    severity: 'stop',
    means: 'The plan file holds nothing but blank lines or comments.',
    says: 'The file holds no plan.',
    remedy: 'Write at least `process` and `disc`; `discwright new` writes a plan to start from.',
  },
  'plan.tab': {
    severity: 'stop',
    means: 'A line of the plan is indented with a tab, which YAML does not allow.',
    values: { text: 'name' },
    says: 'The line `{text}` is indented with a tab.',
    remedy: 'Indent with spaces; most editors can be told to put spaces when Tab is pressed.',
  },
  'plan.several-documents': {
    severity: 'stop',
    means: 'The plan file holds more than one YAML document.',
    says: 'A second YAML document begins here.',
    remedy: 'Keep one plan in one file: remove the line that begins the second document.',
  },
  'plan.too-deep': {
    severity: 'stop',
    means: 'The plan is nested far deeper than any plan needs, or an alias holds itself.',
    values: { limit: 'count' },
    says: 'Nested deeper than {limit, number} levels.',
    remedy: 'Take out the nesting at the place named.',
  },
  'plan.too-much': {
    severity: 'stop',
    means: 'The plan has far more entries than a plan needs, counting what aliases repeat.',
    values: { limit: 'count' },
    says: 'The plan has more than {limit, number} entries.',
    remedy: 'Take out entries or aliases; a ring places many masters in one entry.',
  },
  'plan.too-many': {
    severity: 'stop',
    means: 'A plan places far more things of a kind than one disc holds.',
    formula:
      'places of all entries together; at most 300 masters, gates, vents and build-ups each, 24 bosses',
    source: 'our own choice: so many are still judged within seconds',
    values: { what: ['masters', 'bosses', 'gates', 'vents', 'build-ups'], measured: 'count', limit: 'count' },
    says: 'All entries together place {measured, number} {what}; a disc may have at most {limit, number}.',
    remedy: 'Take out entries or places; check the `count` of the rings.',
  },
  'plan.alias': {
    severity: 'stop',
    means: 'An alias such as `*a` names no anchor `&a` written before it.',
    values: { name: 'name' },
    says: '`*{name}` names no anchor written before it.',
    remedy: 'Correct the name, or put text that begins with * in quotes.',
  },
  'plan.duplicate-key': {
    severity: 'stop',
    means: 'The same name is given twice in one section, so one of the two would be lost.',
    values: { name: 'name', line: 'count' },
    says: '`{name}` is given twice; the first is in line {line}.',
    remedy: 'Keep one of the two.',
  },
  'plan.unknown-key': {
    severity: 'stop',
    means: 'The plan has a name this program does not know; ignoring it could spoil a mold.',
    values: { name: 'name', 'section?': 'name', 'meant?': 'name', known: 'names' },
    says: {
      key: '`{name}` is not known {section, select, none {in a plan} other {in `{section}`}}; {meant, select, none {known are {known}.} other {did you mean `{meant}`?}}',
      code: 'There is no finding `{name}`.',
      reserved: '`{name}` is no name a plan knows.',
    },
    remedy: {
      key: '{meant, select, none {Correct or remove the name.} other {Write `{meant}` if that is meant; known are {known}.}}',
      code: '{meant, select, none {Correct or remove the name.} other {Write `{meant}` if that is meant.}}',
      reserved: 'Correct or remove the name.',
    },
  },
  'plan.missing': {
    severity: 'stop',
    means: 'Something the plan must say is not there.',
    values: { 'name?': 'name', 'other?': 'name', 'about?': 'name' },
    says: {
      field: '`{name}` is not given{about, select, none {.} other {: {about}.}}',
      empty: '`{name}` is empty; give it or take its name out{about, select, none {.} other {: {about}.}}',
      'other half':
        '`{name}` is given but `{other}` is not; give both, or `thickness` alone for two halves alike.',
      'ring count': 'This ring does not say how many: give `count`, `spacing` or `perSector`.',
      'placement place': 'This placement does not say where: give `at`, `ring` or `each`.',
      'boss place': 'This boss does not say where: give `at` or `ring`.',
      'bolt count': 'The bolts do not say how many: give `count` or `spacing`.',
      'bolt circle': '`spacing` is measured along the circle of the bolts: give `circle` or `outsideRim`.',
      'clamp force':
        'How many clamps are needed is found from the pressure and the force each is rated for: give {name}, or their number.',
      master:
        'This master has neither a `file` nor the measures of a stand-in (`outline` or `width` and `length`, with `above` and `below`).',
      'stand-in heights':
        'A stand-in needs `above` and `below`: how far it stands over and under the parting plane.',
      'stand-in shape': 'A stand-in needs either `outline`, or both `width` and `length`.',
      'sector count':
        'How many sectors is not said: give `count`, or `spacing` and the `radius` it is measured at.',
      load: 'What load the heat limit was measured under is not said: give `load`, such as `1.8 MPa` or `0.45 MPa` (ISO 75-2).',
      'entry place': 'This entry does not say where: give `angle`, or both `x` and `y`.',
      path: 'This path does not say where it runs: give `through`, `arc` or `slant`.',
      'runner path': 'This path does not say where it runs: give `through` or `arc`.',
      runner: 'This runner does not say where it goes: give `ring`, or `to` for one that leads outward.',
      pin: 'This vent pin does not say where it stands: give `at`, or `placements`.',
      turn: 'A slowing bend is a turn, and this gate has none: give it a `path` `through` way points.',
      sectors: 'This counts by sectors, and the plan does not divide the disc: give `sectors`.',
    },
    remedy: 'Add it.',
  },
  'plan.wrong-kind': {
    severity: 'stop',
    means: 'The plan gives one kind of thing (a list, a section, text, a number) where another belongs.',
    values: { 'name?': 'name', 'given?': 'name', 'wanted?': 'name', 'about?': 'name' },
    says: {
      field:
        '`{name}` is {given}, {wanted, select, none {which does not fit} other {but must be {wanted}}}{about, select, none {.} other {: {about}.}}',
      'one line': 'This must be text on one line, without control characters.',
      key: 'The name of an entry must be plain text.',
      plan: 'A plan is a list of names with values, such as `process: rubber`, but this is the text `{given}`.',
    },
    remedy: 'Write it as said.',
  },
  'plan.wrong-word': {
    severity: 'stop',
    means: 'The plan gives a word where only certain others are understood.',
    values: { given: 'name', 'known?': 'names', 'meant?': 'name', 'limit?': 'count' },
    says: {
      word: '{given} is not understood here; allowed: {known}.',
      sink: '`{given}` is not understood here; allowed: `silhouette`, a length, or a share such as `50 %`.',
      clamps:
        '`{given}` is no number of clamps; allowed is a whole number from 1 to {limit, number}, or `as needed`.',
    },
    remedy: {
      word: '{meant, select, none {Take one of the words named.} other {Write `{meant}` if that is meant.}}',
      sink: 'Take one of the words named.',
      clamps: 'Take one of the words named.',
    },
  },
  'plan.quantity': {
    severity: 'stop',
    means: 'A quantity in the plan cannot be read as a number with a unit.',
    values: { given: 'name', 'noun?': 'name', 'accepted?': 'name', 'meant?': 'name' },
    says: {
      'bare fraction': '`{given}` has no unit, and fractions are of an inch: did you mean `{meant}`?',
      quantity: '`{given}` cannot be read as {noun}; accepted: {accepted}.',
      'cap nut': '`{given}` is no thread size of a cap nut; write it like `M8` or `3/8`.',
    },
    remedy: {
      'bare fraction': 'Write the unit behind it.',
      quantity: 'Write it like the examples named.',
      'cap nut': 'Write it like the examples named.',
    },
  },
  'plan.wrong-unit': {
    severity: 'stop',
    means: 'A quantity in the plan has a unit that does not fit the field, or lacks the unit it needs.',
    values: { given: 'name', noun: 'name', accepted: 'name', 'unit?': 'name', 'other?': 'name' },
    says: {
      none: '`{given}` has no unit, and {noun} needs one; accepted: {accepted}.',
      unknown: '`{given}` is not {noun}, for `{unit}` is no unit; accepted: {accepted}.',
      other: '`{given}` is not {noun}, for `{unit}` is a unit of {other}; accepted: {accepted}.',
    },
    remedy: 'Take one of the units named.',
  },
  'plan.decimal-comma': {
    severity: 'stop',
    means: 'A number in the plan is written with a comma.',
    values: { given: 'name', 'meant?': 'name' },
    says: {
      number: '`{given}` is written with a comma; write `{meant}` if that is what it means.',
      entry:
        'Between braces a comma parts two entries, so `{given}` stands alone here; if it belongs to the number before it, write a decimal point.',
    },
    remedy: 'Write a decimal point, and no mark between thousands.',
  },
  'plan.out-of-range': {
    severity: 'stop',
    means: 'A value in the plan lies outside what makes sense for the field.',
    values: {
      'given?': 'name',
      'allowed?': 'name',
      'bound?': 'count',
      'side?': ['at least', 'at most'],
      'to?': 'name',
    },
    says: {
      quantity: '`{given}` is out of range; allowed is {allowed}.',
      number: '{given} is out of range; allowed is {side} {allowed}.',
      'empty text': 'The text is empty.',
      text: 'The text is too long; allowed are {side} {bound, number} letters.',
      list: 'The list must have {side} {bound, plural, one {# entry} other {# entries}}.',
      clamps:
        '`{given}` is no number of clamps; allowed is a whole number from 1 to {bound, number}, or `as needed`.',
      'no height': '`above` and `below` are both 0, so this stand-in has no height.',
      severity: '`{given}` protects people and cannot be lowered to `{to}`.',
    },
    remedy: 'Give a value within the range named.',
  },
  'plan.choose-one': {
    severity: 'stop',
    means: 'The plan says the same thing in two ways, or gives a set of fields that do not belong together.',
    values: { 'name?': 'name', 'names?': 'names' },
    says: {
      thickness: '`thickness` is for both halves, so it cannot stand beside `lower` or `upper`.',
      'how many': '{names} both say how many; give one of them.',
      place: '{names} both say where it goes; give one of them.',
      'can gap': '`gap` gives the can its diameter, so it cannot stand beside `diameter`.',
      'rim speed': '`rimSpeed` gives the disc its speed, so it cannot stand beside `speed`.',
      'cap nut': '`{name}` of a cap nut follows from its size.',
      hexagon: 'Only a hexagon has a `draft` of its own.',
      'bolt spacing': '`spacing` gives the number of bolts, so it cannot stand beside `count`.',
      'bolt circle': '`outsideRim` gives the circle of the bolts, so it cannot stand beside `circle`.',
      'stand-in': '`{name}` belongs to a stand-in, but this master has a `file`.',
      mesh: '`{name}` belongs to a mesh file, but this master is a stand-in.',
      size: '{names} each give the master its size; give one of them.',
      'stand-in height':
        '`height` belongs to a mesh file; how high a stand-in is, `above` and `below` say: how far it stands over and under the parting plane.',
      outline: 'Give either `outline`, or `width` and `length`.',
      entry: 'Give either `angle`, or `x` and `y`.',
      path: 'A path runs `through` way points, along one `arc` or at one `slant`; give one of them.',
      'path end':
        'A channel that does not end at the well or the rim has no {name} to run by; give way points, or leave `path` out.',
      pin: 'A vent pin stands `at` a place of the disc, or in the cavities of `placements`; give one of them.',
      runner: 'A ring goes round and has neither end nor path; give `ring` alone, or `to` with a path.',
      pieces: '`most` holds back `as many as fit`; a `count` above it cannot stand beside it.',
      ample: '`ample` is the wall that is wide enough, so it cannot be less than the least wall.',
      'sector radius': '`radius` is where `spacing` is measured, so it cannot stand beside `count`.',
    },
    remedy: 'Keep one of the ways.',
  },
  'plan.contradicts': {
    severity: 'stop',
    means: 'Two fields of the plan cannot both be true.',
    values: { line: 'count' },
    says: {
      melting:
        '`liquidus` is lower than `solidus` in line {line, number}: no metal is wholly molten before it begins to melt.',
      cooling:
        '`coolingConstant` says how the can cools between platens or in the oven, but `cooling: out` in line {line, number} takes the disc out hot.',
    },
    remedy: 'Keep the one that is true.',
  },
  'plan.bad-id': {
    severity: 'stop',
    means: 'A name given by the user has letters that cannot stand in file names and reports.',
    values: { name: 'name' },
    says: {
      letters:
        '`{name}` cannot be a name: use letters, digits and dashes, at most 60, beginning with a letter or digit.',
      reserved: '`{name}` has a meaning of its own and cannot be a name.',
      material: '`{name}` is in the tables, whose figures stand; a material of your own needs another name.',
    },
    remedy: {
      letters: 'Use letters, digits and dashes, beginning with a letter or digit.',
      reserved: 'Use letters, digits and dashes, beginning with a letter or digit.',
      material: 'Name it as its maker does, and write that name where the plan says what something is of.',
    },
  },
  'plan.duplicate-id': {
    severity: 'stop',
    means: 'Two things in the plan have the same name.',
    values: { name: 'name', other: 'name' },
    says: '`{name}` is already the name of {other}.',
    remedy: 'Give one of them another `id`.',
  },
  'plan.unknown-id': {
    severity: 'stop',
    means: 'The plan refers to a master, a placement, a runner or a place of a master that it does not have.',
    values: {
      name: 'name',
      kind: ['master', 'placement', 'runner or placement', 'entry'],
      known: 'names',
      more: 'count',
      'meant?': 'name',
    },
    says: 'There is no {kind} `{name}`; {known, select, none {the plan has none} other {the plan has {known}{more, plural, =0 {} other { and # more}}}}.',
    remedy:
      '{meant, select, none {Correct the name, or add what it names.} other {Write `{meant}` if that is meant.}}',
  },
  'plan.more-faults': {
    severity: 'stop',
    means: 'The plan has so many faults that only the first hundred are listed.',
    values: { more: 'count' },
    says: '{more, plural, one {# more fault follows and is not listed} other {# more faults follow and are not listed}}.',
    remedy: 'Correct those listed and read it again; check that the file is a plan at all.',
  },
});
