import { describe, expect, it } from 'vitest';
import { measureMesh } from '../../../src/mesh/index.ts';
import { type Boss, bossLumps, bossMesh } from '../../../src/mold/index.ts';
import { Pattern } from '../../../src/physics/index.ts';

const hexagon: Boss = {
  id: 'a',
  kind: 'hexagon',
  x: 60,
  y: 20,
  turnRad: 0.4,
  size: 'M8',
  acrossFlats: 13,
  rootDepth: 6.8,
  headRadius: 6.5,
  headHeight: 6.5,
  headDraftRad: 0.2,
  clearance: 0,
};

it('weighs a hexagon as its mesh measures: volume and centroid by the divergence theorem', () => {
  const lumps = bossLumps(hexagon);
  const { volume, centroid } = measureMesh(bossMesh(hexagon, 'rubber'));
  const sum = lumps.reduce((total, lump) => total + lump.volume, 0);
  const z = lumps.reduce((total, lump) => total + lump.volume * lump.z, 0) / sum;
  expect(volume / sum).toBeCloseTo(1, 5);
  expect(centroid[2]).toBeCloseTo(z, 4);
  expect(centroid[0]).toBeCloseTo(60, 3);
  expect(centroid[1]).toBeCloseTo(20, 3);
});

describe('a hexagon and a dome opposite each other', () => {
  const corners = (across: number): number => across / Math.sqrt(3);
  const head = (across: number) => ({ headRadius: across / 2, headHeight: 6, corners: corners(across) });
  const pair = (hexagonAcross: number, domeRadius: number): Pattern =>
    new Pattern(
      [
        { x: 60, y: 0, ...head(hexagonAcross) },
        { x: -60, y: 0, headRadius: domeRadius, headHeight: 6 },
      ],
      0,
    );

  it('close turned by half a turn where each enters the other: corners in the round, round in the flats', () => {
    // 12 across flats is 6.93 to the corners: a dome of 7 takes it, but does not go between its flats.
    expect(pair(12, 7).misfit(Math.PI)).toBeGreaterThan(100);
    // A dome of 6 goes between the flats, but does not take the corners.
    expect(pair(12, 6).misfit(Math.PI)).toBeGreaterThan(100);
  });

  it('two equal hexagons close turned, however their flats stand', () => {
    const equal = new Pattern(
      [
        { x: 60, y: 0, ...head(12) },
        { x: -60, y: 0, ...head(12) },
      ],
      0,
    );
    expect(equal.misfit(Math.PI)).toBeCloseTo(0, 9);
  });
});
