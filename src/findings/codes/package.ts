import { codes } from './entry.ts';

const again = 'Export the master again as STL, OBJ or 3MF.';

/** The file as the plan or the shell names it; the subject may be the master that is read from it. */
const file = { file: 'name' } as const;

/** What may be wrong with a 3MF package and the model in it. */
export const packageCodes = codes({
  'mesh.unit-unknown': {
    severity: 'stop',
    means: 'A 3MF file names a unit that the format does not have.',
    values: { ...file, text: 'name' },
    says: '{file}: its unit is "{text}".',
    remedy: 'Export the master again; 3MF knows micron, millimeter, centimeter, meter, inch and foot.',
  },
  'mesh.package-fault': {
    severity: 'warn',
    means:
      'A 3MF package breaks a rule of its format that does not bear on the shape; it was read all the same.',
    formula: 'rules of the package and of the model part',
    source:
      '3MF Consortium, 3D Manufacturing Format, core specification 1.4.0: links and thumbnail 2.1.1, print ticket 2.1.4, names of metadata 3.4.1, ids of resources 3.4.2, items 3.4.3.1, types and property groups of objects chapter 4, of triangles 4.1.4.1',
    values: { ...file, 'text?': 'name' },
    says: {
      outside: '{file}: it links to "{text}", which lies outside the package.',
      thumbnail: '{file}: its thumbnail "{text}" is not in it.',
      'print-tickets': '{file}: it names more than one print ticket.',
      'metadata-unnamed': '{file}: it holds metadata without a name.',
      'metadata-twice': '{file}: it holds metadata named "{text}" twice.',
      'metadata-spaced': '{file}: it holds metadata named "{text}", with white space in the name.',
      'metadata-prefix': '{file}: it holds metadata named "{text}", whose namespace it does not declare.',
      'group-missing': '{file}: a property group "{text}" is named and not in it.',
      'group-twice': '{file}: two of its resources have the id "{text}".',
      'item-other': '{file}: it builds object "{text}", which is of type other.',
      'object-type': '{file}: it holds an object of type "{text}", which the format does not have.',
    },
    remedy:
      'Nothing to do if the shape is right; other programs may refuse the file, so export it again to be sure.',
  },
  'mesh.mirrored': {
    severity: 'note',
    means: 'A 3MF file places a mesh mirrored; its faces were turned over so that they still look outward.',
    values: { ...file, measured: 'count' },
    says: '{file}: {measured, plural, one {# mesh is} other {# meshes are}} placed mirrored.',
    remedy: 'Check that the mirrored shape is the one meant.',
  },
  'mesh.unpacks-too-large': {
    severity: 'stop',
    means: 'A packed file unpacks to far more than a master can sensibly hold; unpacking was broken off.',
    values: { ...file, measured: 'bytes', limit: 'bytes', part: 'name' },
    says: '{file}: its part {part} unpacks to more than {limit}.',
    remedy: 'Do not trust the file; ask for it again from whoever made it.',
  },
  'mesh.part-missing': {
    severity: 'stop',
    means: 'A 3MF file lacks a part or an object it refers to.',
    values: { ...file, 'part?': 'name', 'object?': 'name' },
    says: {
      relations: '{file}: it is a ZIP archive without the part {part} that every 3MF file has.',
      start: '{file}: it names no 3D model as its start.',
      part: '{file}: it lacks its part "{part}".',
      object: '{file}: it refers to object "{object}", which is not in {part}.',
    },
    remedy: again,
  },
  'mesh.component-circle': {
    severity: 'stop',
    means: 'Objects in a 3MF file are made of one another in a circle or without end.',
    values: { ...file, 'object?': 'name', 'most?': 'count' },
    says: {
      uses: '{file}: its objects use one another more than {most, number} times.',
      itself: '{file}: its object "{object}" is made of itself.',
      deep: '{file}: its object "{object}" is nested more than {most, number} deep.',
    },
    remedy: again,
  },
  'mesh.not-allowed': {
    severity: 'stop',
    means:
      'A 3MF file declares a document type or entities, which the format forbids and which can be used to do harm.',
    values: { ...file, part: 'name', 'fault?': 'name' },
    says: {
      doctype: '{file}: its part {part} declares a document type.',
      entity: '{file}: its part {part} is not well-formed XML ({fault}).',
    },
    remedy: 'Do not trust the file; ask for it again from whoever made it.',
  },
  'mesh.extension-needed': {
    severity: 'stop',
    means: 'A 3MF file says that it cannot be read rightly without an extension that is not known here.',
    values: { ...file, extension: 'name' },
    says: '{file}: it needs the extension {extension}.',
    remedy: 'Export the master again as plain 3MF or as STL.',
  },
});
