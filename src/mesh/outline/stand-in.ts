import type { TriangleMesh } from '../../geometry/index.ts';
import type { Kernel } from '../../kernel/index.ts';
import type { Ring } from '../measure/silhouette.ts';

/**
 * A master known only by its measures, mm: an outline (outer rings counter-clockwise, holes clockwise), or its
 * length along +x, which points outward at turn 0, and width along y; and how far it stands over and under z = 0.
 */
export type StandInShape = (
  | { readonly outline: readonly Ring[] }
  | { readonly width: number; readonly length: number }
) & { readonly above: number; readonly below: number };

/**
 * The stand-in as a closed solid with straight walls, z = 0 being the parting plane; a rectangle is centred on the
 * origin, an outline stays where it is drawn. It contains whatever has that outline and those heights, so walls and
 * cover found from it are never too great, volume and mass never too small.
 * Throws RangeError without a height or a size; KernelFault where the outline encloses nothing.
 */
export function standIn(shape: StandInShape, kernel: Kernel): TriangleMesh {
  const { above, below } = shape;
  if (!(above >= 0) || !(below >= 0) || !(above + below > 0)) {
    throw new RangeError(`a stand-in needs a height, not ${above} above and ${below} below`);
  }
  const outline = 'outline' in shape ? shape.outline : [rectangle(shape.length, shape.width)];
  return kernel.scope((scope) => scope.toMesh(scope.extrude(outline, -below, above, 'stand-in')));
}

function rectangle(length: number, width: number): Ring {
  if (!(length > 0) || !(width > 0)) throw new RangeError(`a stand-in cannot be ${length} x ${width} mm`);
  const [x, y] = [length / 2, width / 2];
  return [
    [-x, -y],
    [x, -y],
    [x, y],
    [-x, y],
  ];
}
