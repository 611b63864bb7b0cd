import { effect } from '@preact/signals';
import { type BufferGeometry, Group } from 'three';
import { masterMeshes, mold } from '../../state/store.ts';
import type { ShownMesh } from '../../worker/messages.ts';
import { kindOf } from '../kinds.ts';
import { emptyGroup, type Stage } from '../stage.ts';
import { geometryOf, thing } from '../thing.ts';

/** The masters where they lie: one geometry for each master, one mesh for each placement. */
export function masters(stage: Stage): () => void {
  const group = new Group();
  stage.sides.lower.add(group);
  const geometries = new Map<ShownMesh, BufferGeometry>();
  const stop = effect(() => {
    emptyGroup(group, new Set(geometries.values()));
    const meshes = masterMeshes.value;
    for (const placement of mold.value?.placements ?? []) {
      const mesh = meshes.get(placement.master);
      if (!mesh) continue;
      const geometry = geometries.get(mesh) ?? geometryOf(mesh);
      geometries.set(mesh, geometry);
      group.add(thing(geometry, kindOf('master'), placement.id, placement.matrix));
    }
    const used = new Set(meshes.values());
    for (const [mesh, geometry] of geometries) {
      if (used.has(mesh)) continue;
      geometry.dispose();
      geometries.delete(mesh);
    }
    stage.draw();
  });
  return () => {
    stop();
    emptyGroup(group);
    stage.sides.lower.remove(group);
  };
}
