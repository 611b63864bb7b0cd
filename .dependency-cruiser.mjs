import { readFileSync } from 'node:fs';
import swc from '@swc/core';

// dependency-cruiser hands every file to swc as plain TypeScript; a file with elements in it has to be announced.
const parse = swc.parseFileSync;
swc.parseFileSync = (file, options) => parse(file, { ...options, tsx: file.endsWith('.tsx') });

// The six floors, from the ground up: a room may import rooms on lower floors only, never a neighbour, never in a
// circle. A room that stands on none may import nothing.
const floors = JSON.parse(readFileSync(new URL('./docs/floors.json', import.meta.url), 'utf8'));

const inside = (rooms) => `^(${rooms.join('|')})/`;

const floorRules = floors.flatMap((rooms, level) =>
  rooms.map((room) => ({
    name: `floor-${level + 1}-${room.replace('/', '-')}`,
    comment: `${room} may know lower floors only`,
    severity: 'error',
    from: { path: inside([room]) },
    to: {
      path: inside([...floors.slice(level + 1).flat(), ...rooms.filter((other) => other !== room)]),
      // The command that shows the page starts the page's server.
      ...(room === 'cli' && { pathNot: '^src/preview/server/index.ts$' }),
    },
  })),
);

export default {
  forbidden: [
    ...floorRules,
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
