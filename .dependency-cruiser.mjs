import { readFileSync } from 'node:fs';
import swc from '@swc/core';

// dependency-cruiser hands every file to swc as plain TypeScript; a file with elements in it has to be announced.
const parse = swc.parseFileSync;
swc.parseFileSync = (file, options) => parse(file, { ...options, tsx: file.endsWith('.tsx') });

// The six floors on the ground of geometry, from the ground (0) up: a room may import rooms on lower floors only, never
// a neighbor, never in a circle. A room that stands on none may import nothing.
const floors = JSON.parse(readFileSync(new URL('./docs/floors.json', import.meta.url), 'utf8'));

const inside = (rooms) => `^(${rooms.join('|')})/`;

/** What the sub-rooms of parts and of checks share; of these only plate knows another, making. */
const shared = ['parts/making', 'parts/plate', 'checks/from-mold'];

/** Every sub-room, with the sub-rooms it knows besides what is shared. Halves are cut by what stands in them. */
const subRooms = [
  ['parts/sprue', []],
  ['parts/registration', ['parts/sprue']],
  ['parts/halves', ['parts/registration', 'parts/sprue']],
  ['parts/supports', []],
  ['parts/flat', []],
  ['parts/printing', ['parts/halves']],
  ['parts/cutting', ['parts/halves']],
  // Pours take the shot that turning finds.
  ['checks/pouring', ['checks/turning']],
  ...['can', 'cover', 'heat', 'registration', 'release', 'turning', 'walls'].map((room) => [
    `checks/${room}`,
    [],
  ]),
];

/** The one neighbor that is meant: a command starts the page's server, and all read files and write plans the way the server does. */
const meantNeighbors = { cli: '^src/preview/server/(index|regular-file|replace-plan|trial-log)[.]ts$' };

const floorRules = floors.flatMap((rooms, level) =>
  rooms.map((room) => ({
    name: `floor-${level}-${room.replace('/', '-')}`,
    comment: `${room} may know lower floors only`,
    severity: 'error',
    from: { path: inside([room]) },
    to: {
      path: inside([...floors.slice(level + 1).flat(), ...rooms.filter((other) => other !== room)]),
      ...(room in meantNeighbors && { pathNot: meantNeighbors[room] }),
    },
  })),
);

export default {
  forbidden: [
    ...floorRules,
    {
      name: 'rooms-through-their-index',
      comment: 'a room is reached from outside through its index.ts alone',
      severity: 'error',
      from: { path: '^(src/[^/]+|cli)/' },
      to: {
        path: '^src/[^/]+/',
        // Distances bring three and its trees along, which only walls need; the page's server is a room of its own, and
        // commands that only read files do not load it.
        pathNot: [
          '^$1/',
          '^src/[^/]+/index[.]ts$',
          '^src/mesh/measure/distance[.]ts$',
          '^src/preview/server/(index|regular-file|replace-plan|trial-log)[.]ts$',
        ],
      },
    },
    {
      name: 'sub-rooms-through-their-index',
      comment:
        'a sub-room of parts or checks is reached from other sub-rooms, and from its room, through its index.ts alone',
      severity: 'error',
      from: { path: '^(src/(?:parts|checks))/([^/]+)' },
      to: { path: '^(src/(?:parts|checks))/[^/]+/', pathNot: ['^$1/$2/', '^$1/[^/]+/index[.]ts$'] },
    },
    ...subRooms.map(([from, known]) => ({
      name: `sub-room-${from.replaceAll('/', '-')}`,
      comment: `${from} knows what its room's sub-rooms share, and of the others only those named`,
      severity: 'error',
      from: { path: `^src/${from}/` },
      to: {
        path: '^src/(parts|checks)/',
        pathNot: [from, ...shared, ...known].map((room) => `^src/${room}/`),
      },
    })),
    {
      name: 'every-sub-room-is-named',
      comment: 'a sub-room of parts or checks stands in the list above, so that who may know it is said',
      severity: 'error',
      from: {
        path: '^src/(parts|checks)/[^/]+/',
        pathNot: [...shared, ...subRooms.map(([room]) => room)].map((room) => `^src/${room}/`),
      },
      to: {},
    },
    {
      name: 'shared-sub-rooms-know-no-other',
      comment: 'what the others stand on does not know them; making does not know plate',
      severity: 'error',
      from: { path: '^src/(parts/making|parts/plate|checks/from-mold)/' },
      to: { path: '^src/(parts|checks)/', pathNot: ['^src/$1/', '^src/parts/making/'] },
    },
    {
      name: 'every-room-has-a-floor',
      comment: 'docs/floors.json names all rooms',
      severity: 'error',
      from: { path: '^src/', pathNot: inside(floors.flat()) },
      to: {},
    },
    {
      name: 'no-circle',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'core-runs-in-a-browser',
      comment: 'src (all but the preview server) takes bytes and returns bytes: no node: import',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/preview/server' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'one-seam-to-the-boolean-kernel',
      severity: 'error',
      from: { path: '^(src|cli)/', pathNot: '^src/kernel/' },
      // The page's workers say where the kernel's WASM lies; that is an address, not code.
      to: { path: 'manifold-3d', pathNot: 'wasm[?]url$' },
    },
    {
      name: 'nothing-imports-tests-or-presets',
      severity: 'error',
      from: { path: '^(src|cli)/' },
      to: { path: '^(tests|presets|bench|docs)/' },
    },
    {
      name: 'only-declared-packages',
      severity: 'error',
      // Only runs from the source, where the packages for development are.
      from: { path: '^(src|cli)/', pathNot: '^cli/batch/from-source.mjs$' },
      to: {
        dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown', 'unknown', 'undetermined'],
        // A name with a question mark is one the page's bundler turns into an address or a text.
        pathNot: '^@types/|[?]',
      },
    },
  ],
  options: {
    parser: 'swc',
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      extensions: ['.ts', '.tsx', '.js', '.mjs', '.json', '.css'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'default', 'types'],
    },
  },
};
