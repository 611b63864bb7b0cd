import { type Finding, finding } from '../findings/index.ts';
import { crossingsOf, movePoint, type Vec3 } from '../geometry/index.ts';
import type { Solid } from '../mold/index.ts';
import { type Audit, auditStl, isClosed } from './audit.ts';
import { writeStl } from './stl.ts';

/** A file of the build: `path` is relative to the build's folder, with `/` between names. */
export interface ExportFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** A solid with the STL written from it and what the audit found in those bytes. */
export interface CheckedSolid {
  readonly solid: Solid;
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly audit: Audit;
  /** A stop where the file is not one closed, outward oriented surface: then it must not be handed out. A warning where its faces cross. */
  readonly findings: readonly Finding[];
}

/** Up to this many facets `@jscad/stl-serializer`'s writer is used; see `writeSmallStl` for the figures. */
export const smallSolidFacets = 2000;

/**
 * Writes a solid as binary STL and audits the bytes. The mesh stays in its printing or machining orientation. Throws
 * RangeError where the id cannot be a file's name on every system; the plan's ids are held to that when read.
 */
export async function exportSolid(solid: Solid): Promise<CheckedSolid> {
  if (!/^[^./\\:*?"<>|\p{Cc}][^/\\:*?"<>|\p{Cc}]*$/u.test(solid.id))
    throw new RangeError(`exportSolid: ${JSON.stringify(solid.id)} is no file name`);
  const bytes = await writeSolid(solid);
  const audit = auditStl(bytes);
  return {
    solid,
    name: `${solid.id}.stl`,
    bytes,
    audit,
    findings: isClosed(audit) ? crossed(solid) : [notClosed(solid, audit)],
  };
}

async function writeSolid({ id, mesh }: Solid): Promise<Uint8Array> {
  const header = `discwright ${id}, mm`;
  if (mesh.triangles.length / 3 > smallSolidFacets) return writeStl(mesh, header);
  // Loaded here: the package brings all of JSCAD with it, which commands that write no solid need not wait for.
  const { writeSmallStl } = await import('./stl-jscad.ts');
  return writeSmallStl(mesh, header);
}

/** Written all the same: a slicer takes what is crossed by less than it can lay. */
function crossed({ id, title, mesh, toMold }: Solid): Finding[] {
  const crossings = crossingsOf(mesh);
  if (crossings.length === 0) return [];
  const deepest = crossings.reduce((most, one) => (one.depth > most.depth ? one : most));
  const at = [0, 1, 2].map((axis) => mesh.positions[deepest.corner * 3 + axis]) as unknown as Vec3;
  const values = { measured: crossings.length, limit: 0, title, deepest: deepest.depth };
  return [finding('solid.crossed', { subject: id, place: movePoint(toMold, at), values })];
}

function notClosed({ id, title, toMold }: Solid, audit: Audit): Finding {
  const { triangles, openEdges, nonManifoldEdges, flippedEdges, volume, faultAt } = audit;
  const { degenerate, duplicates, pinchedVertices, notFinite } = audit;
  const values = {
    measured: openEdges + nonManifoldEdges + flippedEdges,
    limit: 0,
    title,
    triangles,
    openEdges,
    crowdedEdges: nonManifoldEdges,
    flippedEdges,
    degenerate,
    duplicates,
    pinchedVertices,
    notFinite,
    ...(triangles > 0 && !(volume > 0) && { volume }),
  };
  const place = faultAt && movePoint(toMold, faultAt);
  return finding('solid.not-closed', { subject: id, ...(place && { place }), values });
}
