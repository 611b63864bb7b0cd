import { codes } from './entry.ts';

export const meshCodes = codes({
  'mesh.unreadable': {
    severity: 'stop',
    means: 'A master file cannot be read as a mesh.',
    remedy: 'Export the master again as STL, OBJ or 3MF.',
  },
});
