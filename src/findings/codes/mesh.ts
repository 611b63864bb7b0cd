import { codes } from './entry.ts';

const again = 'Export the master again as STL, OBJ or 3MF.';
const wholeAgain = 'Copy or export the file again; it was probably cut off while it was written or sent.';

/** The file as the plan or the shell names it; the subject may be the master that is read from it. */
const file = { file: 'name' } as const;
/** The format that the file's name promises. */
const promised = { 'promised?': ['STL', 'OBJ', '3MF'] } as const;
const notPromised = 'not {promised, select, none {STL, OBJ or 3MF} other {{promised}}}';
const whatItIs =
  '{holds, select, ply {a PLY file} glb {a binary glTF file} json {JSON text, perhaps glTF} step {a STEP file} off {an OFF file} html {a web page} xml {XML text that is not packed as 3MF} pdf {a PDF} picture {a picture} gzip {a gzip archive} dwg {a DWG drawing} fbx {an FBX file} blend {a Blender file} other {an archive}}';

/** Formats that are taken for meshes we read, or that meshes come wrapped in. */
const foreign = [
  'ply',
  'glb',
  'json',
  'step',
  'off',
  'html',
  'xml',
  'pdf',
  'picture',
  'archive',
  'gzip',
  'dwg',
  'fbx',
  'blend',
] as const;

const zip = '{file}: it is a damaged ZIP archive;';
const model = '{file}: in its part {part},';
/** Statements of text formats whose numbers are read. */
const statement = '{statement, select, vertex {a vertex} other {a point (v)}}';

const broken =
  '{file}: {measured, number} of {total, number} faces have corners that are not finite numbers, the first';
const brokenUse = '{limit, select, none {they were left out} other {so broken a file is not used}}';

const kindsAndMore = '{kinds}{more, select, none {} other {, and {more, number} of other kinds}}';
const notSurface = `{file}: ${kindsAndMore} were not read, being no part of a surface`;
const unusedPoints =
  '{points, plural, one {# point that no face names was} other {# points that no face names were}} left out';

/** What a file lacks or holds that keeps it from being read; `text` is a piece of the file. */
const unreadable = {
  'not-zip': '{file}: it is not a ZIP archive, which every 3MF file is.',
  'not-solid': '{file}: it is text, but does not begin with "solid" as ASCII STL does.',
  unexpected:
    '{file}: "{text}" stands where "{wanted}"{orWanted, select, none {} other { or "{orWanted}"}} was expected.',
  'facet-many': '{file}: facet {facet, number} has more than three corners.',
  'facet-few': '{file}: facet {facet, number} has only {count, plural, one {# corner} other {# corners}}.',
  'numbers-few': `{file}: ${statement} has too few numbers.`,
  'numbers-many': `{file}: ${statement} has more than eight numbers.`,
  number: `{file}: "{text}" stands where a number of ${statement} was expected.`,
  'point-number': '{file}: "{text}" stands where a point number of a face was expected.',
  'corners-few': '{file}: a face has {count, plural, one {# corner} other {# corners}}, fewer than three.',
  'corners-many': '{file}: a face has more than {count, number} corners.',
  cutting: '{file}: its faces have so many corners that cutting them into triangles takes too long.',
  'zip-entries': `${zip} its directory lists {count, number} parts.`,
  'zip-directory': `${zip} its directory is broken.`,
  'zip64-directory': `${zip} its ZIP64 directory is not where the file says.`,
  'zip-place': `${zip} its part {part} is not where the directory says.`,
  'zip-past-end': `${zip} its part {part} runs past the end of the file.`,
  'zip-method': `${zip} its part {part} is packed in a way (method {count}) that is not known here.`,
  'zip-rubbish': `${zip} its part {part} cannot be unpacked.`,
  'zip-checksum': `${zip} the checksum of its part {part} is wrong.`,
  xml: '{file}: its part {part} is not well-formed XML ({fault}).',
  'xml-deep': '{file}: its part {part} is nested too deep.',
  'xml-between': '{file}: its part {part} holds too much between two tags.',
  starts: '{file}: it names {count} 3D models as its start.',
  'parts-many': '{file}: it has more than {count, number} model parts.',
  'model-root': `${model} its outermost element is "{text}", not "model" of 3MF.`,
  'model-twice': `${model} two objects have the id "{text}".`,
  'model-point': `${model} "{text}" is no point number.`,
  'model-number': `${model} "{text}" stands where a finite number was expected.`,
  'model-lacks': `${model} an element lacks its attribute "{text}".`,
  'transform-short': `${model} a transform has fewer than 12 numbers.`,
  'transform-long': `${model} a transform has more than 12 numbers.`,
  'transform-flat': `${model} a transform flattens its object.`,
} as const;

export const meshCodes = codes({
  'mesh.unreadable': {
    severity: 'stop',
    means: 'A master file cannot be read as a mesh.',
    values: {
      ...file,
      'text?': 'name',
      /** Words of the format that may stand there. */
      'wanted?': 'name',
      'orWanted?': 'name',
      'statement?': ['vertex', 'point'],
      'facet?': 'count',
      'count?': 'count',
      'part?': 'name',
      /** What the XML parser says. */
      'fault?': 'name',
    },
    says: unreadable,
    remedy: again,
  },
  'mesh.unknown-kind': {
    severity: 'stop',
    means: 'A master file is neither STL nor OBJ nor 3MF, whatever its name says.',
    values: { ...file, ...promised, 'holds?': foreign },
    says: {
      foreign: `{file}: it is ${whatItIs}, ${notPromised}.`,
      unknown: '{file}: it is neither STL nor OBJ nor 3MF.',
    },
    remedy: again,
  },
  'mesh.kind-differs': {
    severity: 'note',
    means: 'A master file holds another format than its name says; it was read by what it holds.',
    values: { ...file, holds: ['binary STL', 'ASCII STL', 'OBJ', '3MF'], promised: ['STL', 'OBJ', '3MF'] },
    says: '{file}: it holds {holds}, not {promised} as its name says.',
    remedy: 'Rename the file so that other programs open it too.',
  },
  'mesh.file-empty': {
    severity: 'stop',
    means: 'A master file has no content at all.',
    values: file,
    says: '{file}: the file is empty.',
    remedy: wholeAgain,
  },
  'mesh.file-too-large': {
    severity: 'stop',
    means: 'A master file is larger than can be worked on in memory, so it was not read.',
    values: { ...file, measured: 'bytes', limit: 'bytes' },
    says: '{file}: the file has {measured}, more than {limit}.',
    remedy: 'Reduce the number of triangles before exporting, or export binary STL.',
  },
  'mesh.too-many-triangles': {
    severity: 'stop',
    means: 'A master file holds more triangles or points than can be worked on in memory.',
    values: { ...file, measured: 'count', limit: 'count', what: ['triangles', 'points'] },
    says: '{file}: it holds more than {limit, number} {what}.',
    remedy: 'Reduce the number of triangles before exporting.',
  },
  'mesh.truncated': {
    severity: 'stop',
    means: 'A master file ends before everything it announces is there.',
    values: { ...file, 'size?': 'bytes', 'measured?': 'count', 'limit?': 'count', 'triangle?': 'count' },
    says: {
      header: '{file}: a binary STL file has at least 84 bytes, this one {size}.',
      faces:
        '{file}: its header announces {limit, plural, one {# triangle} other {# triangles}}, but its {size} hold only {measured, number}.',
      middle: '{file}: it ends in the middle of triangle {triangle, number}.',
      zip: '{file}: it is a ZIP archive without its directory, which stands at the end.',
    },
    remedy: wholeAgain,
  },
  'mesh.extra-bytes': {
    severity: 'warn',
    means: 'A binary STL file is longer than its triangle count accounts for; the rest was not read.',
    values: { ...file, measured: 'bytes', limit: 'bytes', triangles: 'count' },
    says: '{file}: its header announces {triangles, plural, one {# triangle, which ends} other {# triangles, which end}} after {limit}, but it has {measured}; the rest was not read.',
    remedy: 'Look whether the master is complete; export it again if not.',
  },
  'mesh.no-end': {
    severity: 'warn',
    means: 'An ASCII STL file does not end with "endsolid": its last triangles may be missing.',
    values: { ...file, triangles: 'count' },
    says: '{file}: it ends after {triangles, plural, one {# triangle} other {# triangles}} without "endsolid".',
    remedy: 'Look whether the master is complete; export it again if not.',
  },
  'mesh.no-faces': {
    severity: 'stop',
    means: 'A master file holds no triangles: points, lines or curves alone are no surface.',
    values: { ...file, 'room?': 'count', 'points?': 'count' },
    says: {
      header:
        '{file}: its header announces 0 triangles{room, select, none {} other {, though there are bytes for {room, number}}}.',
      facets: '{file}: it is an ASCII STL file without a single facet.',
      points:
        '{file}: it holds no face (f){points, select, none {} other {, only {points, plural, one {# point} other {# points}}}}.',
      'no-items': '{file}: nothing is listed to be built.',
      'empty-items': '{file}: what is to be built holds no triangles.',
    },
    remedy: 'Export the master again with its surface as triangles.',
  },
  'mesh.not-finite': {
    severity: 'warn',
    means:
      'Some triangles have corners that are not finite numbers and were left out; where they are many, the file is not used.',
    values: {
      ...file,
      'measured?': 'count',
      /** Only where so many are broken that the file is not used. */
      'limit?': 'count',
      'total?': 'count',
      'face?': 'count',
      'byte?': 'count',
      'line?': 'count',
    },
    says: {
      face: `${broken} face {face, number} at byte {byte, number}; ${brokenUse}.`,
      line: `${broken} in line {line}; ${brokenUse}.`,
      point: `${broken} by the point in line {line}; ${brokenUse}.`,
      transforms: '{file}: its transforms carry points beyond all numbers.',
    },
    remedy: 'Look at the holes this left; export the master again if the shape matters there.',
  },
  'mesh.decimal-comma': {
    severity: 'stop',
    means: 'Numbers in a master file are written with a decimal comma, which mesh formats do not allow.',
    values: { ...file, text: 'name' },
    says: '{file}: "{text}" is written with a decimal comma.',
    remedy: 'Export again with the decimal point (set the language of the exporting program to English).',
  },
  'mesh.utf16': {
    severity: 'stop',
    means: 'A master file is text in UTF-16, in which mesh formats are not written.',
    values: file,
    says: '{file}: it is text in UTF-16.',
    remedy: 'Save the text as UTF-8 or ASCII, or export the master again.',
  },
  'mesh.several-solids': {
    severity: 'note',
    means: 'A file holds several solids; all of them were read into one master.',
    values: { ...file, measured: 'count' },
    says: {
      solids: '{file}: it holds {measured, number} solids, all read into one master.',
      items: '{file}: its {measured, number} build items were read into one master.',
    },
    remedy: 'Split the file if the solids are to be placed one by one.',
  },
  'mesh.bad-index': {
    severity: 'stop',
    means: 'A face names a point that the file does not hold.',
    values: { ...file, 'point?': 'count', 'points?': 'count' },
    says: {
      zero: '{file}: a face names point 0; points are counted from 1.',
      after: '{file}: a face names point {point}, but the file holds {points}.',
      before:
        '{file}: a face names point {point}, but there {points, plural, one {is only # point} other {are only # points}} before it.',
      object: '{file}: a triangle names point {point}, but its object has {points} (counted from 0).',
    },
    remedy: again,
  },
  'mesh.polygons-cut': {
    severity: 'note',
    means: 'Faces with more than three corners were cut into triangles.',
    values: { ...file, measured: 'count' },
    says: '{file}: {measured, plural, one {# face with more than three corners was} other {# faces with more than three corners were}} cut into triangles.',
    remedy: 'Nothing to do.',
  },
  'mesh.polygons-rough': {
    severity: 'warn',
    means:
      'Faces whose outline crosses itself or has no plane were cut into triangles as well as they can be.',
    values: { ...file, measured: 'count' },
    says: '{file}: {measured, plural, one {# face has} other {# faces have}} an outline that crosses itself or has no plane.',
    remedy: 'Look at the place; turn the faces into triangles before exporting if the shape matters there.',
  },
  'mesh.skipped': {
    severity: 'note',
    means: 'A file holds things that are no part of a surface; they were not read.',
    values: {
      ...file,
      /** Each with how many there are: `3 x "l"`; how many things more are of other kinds. */
      'kinds?': 'names',
      'more?': 'count',
      'points?': 'count',
    },
    says: {
      statements: `${notSurface}.`,
      'statements-and-points': `${notSurface}; besides, ${unusedPoints}.`,
      points: `{file}: ${unusedPoints}.`,
      objects: `{file}: objects that are no part of the model (${kindsAndMore}) were not read.`,
    },
    remedy: 'Nothing to do unless the master lacks something.',
  },
  'mesh.encrypted': {
    severity: 'stop',
    means: 'A file is locked by a password or encrypted.',
    values: { ...file, ...promised, 'part?': 'name' },
    says: {
      package: `{file}: it is a locked package, ${notPromised}.`,
      part: '{file}: its part {part} is encrypted.',
      content: '{file}: its content is encrypted.',
    },
    remedy: 'Export the master again without a password.',
  },
});
