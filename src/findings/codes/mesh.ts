import { codes } from './entry.ts';

const again = 'Export the master again as STL, OBJ or 3MF.';
const wholeAgain = 'Copy or export the file again; it was probably cut off while it was written or sent.';

export const meshCodes = codes({
  'mesh.unreadable': {
    severity: 'stop',
    means: 'A master file cannot be read as a mesh.',
    remedy: again,
  },
  'mesh.unknown-kind': {
    severity: 'stop',
    means: 'A master file is neither STL nor OBJ nor 3MF, whatever its name says.',
    remedy: again,
  },
  'mesh.kind-differs': {
    severity: 'note',
    means: 'A master file holds another format than its name says; it was read by what it holds.',
    remedy: 'Rename the file so that other programs open it too.',
  },
  'mesh.file-empty': {
    severity: 'stop',
    means: 'A master file has no content at all.',
    remedy: wholeAgain,
  },
  'mesh.file-too-large': {
    severity: 'stop',
    means: 'A master file is larger than can be worked on in memory, so it was not read.',
    remedy: 'Reduce the number of triangles before exporting, or export binary STL.',
  },
  'mesh.too-many-triangles': {
    severity: 'stop',
    means: 'A master file holds more triangles or points than can be worked on in memory.',
    remedy: 'Reduce the number of triangles before exporting.',
  },
  'mesh.truncated': {
    severity: 'stop',
    means: 'A master file ends before everything it announces is there.',
    remedy: wholeAgain,
  },
  'mesh.extra-bytes': {
    severity: 'warn',
    means: 'A binary STL file is longer than its triangle count accounts for; the rest was not read.',
    remedy: 'Look whether the master is complete; export it again if not.',
  },
  'mesh.no-end': {
    severity: 'warn',
    means: 'An ASCII STL file does not end with "endsolid": its last triangles may be missing.',
    remedy: 'Look whether the master is complete; export it again if not.',
  },
  'mesh.no-faces': {
    severity: 'stop',
    means: 'A master file holds no triangles: points, lines or curves alone are no surface.',
    remedy: 'Export the master again with its surface as triangles.',
  },
  'mesh.not-finite': {
    severity: 'warn',
    means:
      'Some triangles have corners that are not finite numbers and were left out; where they are many, the file is not used.',
    remedy: 'Look at the holes this left; export the master again if the shape matters there.',
  },
  'mesh.decimal-comma': {
    severity: 'stop',
    means: 'Numbers in a master file are written with a decimal comma, which mesh formats do not allow.',
    remedy: 'Export again with the decimal point (set the language of the exporting program to English).',
  },
  'mesh.utf16': {
    severity: 'stop',
    means: 'A master file is text in UTF-16, in which mesh formats are not written.',
    remedy: 'Save the text as UTF-8 or ASCII, or export the master again.',
  },
  'mesh.several-solids': {
    severity: 'note',
    means: 'A file holds several solids; all of them were read into one master.',
    remedy: 'Split the file if the solids are to be placed one by one.',
  },
  'mesh.bad-index': {
    severity: 'stop',
    means: 'A face names a point that the file does not hold.',
    remedy: again,
  },
  'mesh.polygons-cut': {
    severity: 'note',
    means: 'Faces with more than three corners were cut into triangles.',
    remedy: 'Nothing to do.',
  },
  'mesh.polygons-rough': {
    severity: 'warn',
    means:
      'Faces whose outline crosses itself or has no plane were cut into triangles as well as they can be.',
    remedy: 'Look at the place; turn the faces into triangles before exporting if the shape matters there.',
  },
  'mesh.skipped': {
    severity: 'note',
    means: 'A file holds things that are no part of a surface; they were not read.',
    remedy: 'Nothing to do unless the master lacks something.',
  },
  'mesh.unit-unknown': {
    severity: 'stop',
    means: 'A 3MF file names a unit that the format does not have.',
    remedy: 'Export the master again; 3MF knows micron, millimeter, centimeter, meter, inch and foot.',
  },
  'mesh.mirrored': {
    severity: 'note',
    means: 'A 3MF file places a mesh mirrored; its faces were turned over so that they still look outward.',
    remedy: 'Check that the mirrored shape is the one meant.',
  },
  'mesh.encrypted': {
    severity: 'stop',
    means: 'A file is locked by a password or encrypted.',
    remedy: 'Export the master again without a password.',
  },
  'mesh.unpacks-too-large': {
    severity: 'stop',
    means: 'A packed file unpacks to far more than a master can sensibly hold; unpacking was broken off.',
    remedy: 'Do not trust the file; ask for it again from whoever made it.',
  },
  'mesh.part-missing': {
    severity: 'stop',
    means: 'A 3MF file lacks a part or an object it refers to.',
    remedy: again,
  },
  'mesh.component-circle': {
    severity: 'stop',
    means: 'Objects in a 3MF file are made of one another in a circle or without end.',
    remedy: again,
  },
  'mesh.not-allowed': {
    severity: 'stop',
    means:
      'A 3MF file declares a document type or entities, which the format forbids and which can be used to do harm.',
    remedy: 'Do not trust the file; ask for it again from whoever made it.',
  },
  'mesh.extension-needed': {
    severity: 'stop',
    means: 'A 3MF file says that it cannot be read rightly without an extension that is not known here.',
    remedy: 'Export the master again as plain 3MF or as STL.',
  },
});
