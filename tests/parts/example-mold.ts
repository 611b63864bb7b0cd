import { segmentsFor, type TriangleMesh } from '../../src/geometry/index.ts';
import {
  type Boss,
  flatPartingSurface,
  type Mold,
  type Part,
  type Solid,
  type Sprue,
  type Tools,
} from '../../src/mold/index.ts';

export const exampleSprue: Sprue = {
  holeRadius: 12.5,
  draftRad: (3 * Math.PI) / 180,
  wellRadius: 19,
  wellDepth: 8,
  domeRadius: 9,
  domeHeight: 4,
  fillet: 1.5,
  grip: 12,
};

/** A flat mold without masters: 150 mm disc of two halves, 19.05 and 12.7 mm thick. */
export const exampleMold = (changes: Partial<Mold> = {}): Mold => ({
  title: 'hedgerow charms',
  units: 'metric',
  revision: '1',
  paper: 'A4',
  process: 'rigid',
  disc: { radius: 75, lower: 19.05, upper: 12.7, rimChamfer: 1, label: 'hedgerow 1' },
  sprue: exampleSprue,
  masters: [],
  placements: [],
  bosses: [],
  supports: [],
  tabs: [],
  notches: [],
  ventPins: [],
  channels: [],
  parting: flatPartingSurface(75),
  fixture: { material: 'resin', clearance: 0.2, chordError: 0.01, relieve: false },
  bench: {},
  places: {},
  limits: {
    cover: 3,
    wall: 3,
    web: 1,
    cavityToWell: 8,
    cavityToBoss: 5,
    cavityToRim: 10,
    bossToRim: 6,
    falseSeat: 3,
    mismatch: 0.4,
    undercutShare: 0.1,
    slenderness: 4,
  },
  ...changes,
});

/** A cone 10 mm across at (60, 0), 6 mm high on a root of 4 mm. */
export const exampleBoss = (changes: Partial<Boss> = {}): Boss => ({
  id: 'a',
  kind: 'cone',
  x: 60,
  y: 0,
  turnRad: 0,
  size: '10',
  acrossFlats: 0,
  rootDepth: 4,
  headRadius: 5,
  headHeight: 6,
  clearance: 0,
  ...changes,
});

export const solidsOf = (part: Part, mold: Mold, tools: Tools): Solid[] =>
  part.units(mold).flatMap((unit) => unit.run(tools).solids);

/** Signed volume by the divergence theorem, in float64. */
export function volumeOf({ positions: p, triangles }: TriangleMesh): number {
  let six = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i] * 3, triangles[i + 1] * 3, triangles[i + 2] * 3];
    six +=
      p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
      p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
      p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
  }
  return six / 6;
}

/** Share of a circle's area its inscribed polygon has: (n / 2 pi) sin(2 pi / n). */
export const polygonShare = (segments: number): number =>
  (segments / (2 * Math.PI)) * Math.sin((2 * Math.PI) / segments);

export const shareAt = (radius: number, chordError = 0.01): number =>
  polygonShare(segmentsFor(radius, chordError));

/** Frustum of a cone: V = pi h / 3 (R^2 + R r + r^2). */
export const frustum = (foot: number, top: number, height: number): number =>
  (Math.PI * height * (foot * foot + foot * top + top * top)) / 3;

/** Spherical cap from its height and half the width of its foot: V = pi h / 6 (3 a^2 + h^2). */
export const cap = (halfWidth: number, height: number): number =>
  ((Math.PI * height) / 6) * (3 * halfWidth ** 2 + height ** 2);
