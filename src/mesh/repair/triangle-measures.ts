/**
 * Solid angle (sr) of the triangle at c[i..i+9) seen from a point, negative where the point is in front of the face.
 * Van Oosterom and Strackee 1983, "The solid angle of a plane triangle".
 */
export function solidAngle(c: Float64Array, i: number, x: number, y: number, z: number): number {
  const ax = c[i] - x;
  const ay = c[i + 1] - y;
  const az = c[i + 2] - z;
  const bx = c[i + 3] - x;
  const by = c[i + 4] - y;
  const bz = c[i + 5] - z;
  const cx = c[i + 6] - x;
  const cy = c[i + 7] - y;
  const cz = c[i + 8] - z;
  const la = Math.sqrt(ax * ax + ay * ay + az * az);
  const lb = Math.sqrt(bx * bx + by * by + bz * bz);
  const lc = Math.sqrt(cx * cx + cy * cy + cz * cz);
  const triple = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  const below =
    la * lb * lc +
    (ax * bx + ay * by + az * bz) * lc +
    (bx * cx + by * cy + bz * cz) * la +
    (cx * ax + cy * ay + cz * az) * lb;
  return 2 * Math.atan2(triple, below);
}

/** Squared distance (mm2) from a point to the triangle at c[i..i+9), by the region the point's foot falls in. */
export function distance2ToTriangle(c: Float64Array, i: number, x: number, y: number, z: number): number {
  const abx = c[i + 3] - c[i];
  const aby = c[i + 4] - c[i + 1];
  const abz = c[i + 5] - c[i + 2];
  const acx = c[i + 6] - c[i];
  const acy = c[i + 7] - c[i + 1];
  const acz = c[i + 8] - c[i + 2];
  const px = x - c[i];
  const py = y - c[i + 1];
  const pz = z - c[i + 2];
  const d1 = abx * px + aby * py + abz * pz;
  const d2 = acx * px + acy * py + acz * pz;
  const bb = abx * abx + aby * aby + abz * abz;
  const cc = acx * acx + acy * acy + acz * acz;
  const bc = abx * acx + aby * acy + abz * acz;
  const det = bb * cc - bc * bc;
  const v = det > 0 ? (cc * d1 - bc * d2) / det : -1;
  const w = det > 0 ? (bb * d2 - bc * d1) / det : -1;
  if (v >= 0 && w >= 0 && v + w <= 1) {
    const ex = px - v * abx - w * acx;
    const ey = py - v * aby - w * acy;
    const ez = pz - v * abz - w * acz;
    return ex * ex + ey * ey + ez * ez;
  }
  // The foot is outside the face: the nearest point is on one of the three sides.
  return Math.min(
    toSide(px, py, pz, abx, aby, abz, bb),
    toSide(px, py, pz, acx, acy, acz, cc),
    toSide(px - abx, py - aby, pz - abz, acx - abx, acy - aby, acz - abz, bb + cc - 2 * bc),
  );
}

function toSide(px: number, py: number, pz: number, ux: number, uy: number, uz: number, uu: number): number {
  const t = uu > 0 ? Math.min(1, Math.max(0, (px * ux + py * uy + pz * uz) / uu)) : 0;
  const ex = px - t * ux;
  const ey = py - t * uy;
  const ez = pz - t * uz;
  return ex * ex + ey * ey + ez * ez;
}
