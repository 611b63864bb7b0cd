import type { geometries } from '@jscad/modeling';
import createModule, {
  type CrossSection,
  type Manifold,
  type ManifoldToplevel,
  type Mat4,
  type Mesh,
} from 'manifold-3d/manifold';
import type { Matrix4, TriangleMesh, Vec3 } from '../geometry/index.ts';
import { brokeDown, codeOf, KernelExhausted, KernelFault } from './fault.ts';

/** An opaque kernel solid. Lives in the scope that made it and is freed with it. */
export type Body = Manifold;
export type Profile = CrossSection;
export type Geom3 = geometries.geom3.Geom3;

/**
 * Inputs closer than this are the same point to the kernel. Float32 coordinates of a 500 mm disc step by 3e-5 mm;
 * a looser value than that step keeps coplanar faces coplanar after rounding.
 */
const tolerance = 1e-4;

/** Sides of a full turn of a rounded offset. */
const arcSegments = 64;

/** Where the wasm file is; only a browser bundle needs to say. */
export interface KernelOptions {
  readonly wasmUrl?: string;
}

let loading: Promise<Kernel> | undefined;

/** Loads the boolean kernel once (about 20 - 60 ms) and hands out the same one afterwards. */
export function loadKernel(options: KernelOptions = {}): Promise<Kernel> {
  loading ??= start(options);
  return loading;
}

async function start({ wasmUrl }: KernelOptions): Promise<Kernel> {
  const wasm = await createModule(wasmUrl ? { locateFile: () => wasmUrl } : undefined);
  wasm.setup();
  return new Kernel(wasm);
}

/** The seam: every 3D boolean goes through a scope of this. */
export class Kernel {
  private isBroken = false;
  constructor(private readonly wasm: ManifoldToplevel) {}

  /**
   * Runs `run` with a scope whose bodies are all freed at its end, whether it returns or throws. Throws
   * KernelExhausted where the kernel breaks down, and from then on at once.
   */
  scope<T>(run: (scope: Scope) => T): T {
    if (this.isBroken) throw new KernelExhausted();
    const scope = new Scope(this.wasm);
    try {
      return run(scope);
    } catch (error) {
      if (!brokeDown(error)) throw error;
      this.isBroken = true;
      loading = undefined;
      throw new KernelExhausted();
    } finally {
      // Of a broken kernel nothing can be freed by itself; it goes as a whole.
      if (!this.isBroken) scope.free();
    }
  }
}

/** How far simplifying moves a surface at most, mm: measured, about 2.7 times the tolerance it is given. */
export const movedBySimplify = (toleranceMm: number): number => 2.7 * toleranceMm;

/**
 * Kernel operations. Every body made here is guarded (status, emptiness where a solid is expected) and freed with
 * the scope. `what` names the solid in messages. A KernelFault is thrown where no usable solid comes out.
 */
export class Scope {
  private readonly owned = new Set<{ delete(): void }>();
  constructor(private readonly wasm: ManifoldToplevel) {}

  private keep<T extends { delete(): void }>(thing: T): T {
    this.owned.add(thing);
    return thing;
  }

  free(): void {
    for (const thing of this.owned) thing.delete();
    this.owned.clear();
  }

  /** Frees one body before its scope ends. */
  drop(body: Body): void {
    if (this.owned.delete(body)) body.delete();
  }

  private sound(body: Body, what: string): Body {
    this.keep(body);
    const status = body.status();
    if (status !== 'NoError') throw new KernelFault(what, `the kernel reports ${status}`);
    return body;
  }

  /** Guards that there is something: an empty solid is a fault, not a result. */
  expectSolid(body: Body, what: string): Body {
    if (body.isEmpty() || !(body.volume() > 0)) throw new KernelFault(what, 'nothing is left of it');
    return body;
  }

  private inputOf({ positions, triangles }: TriangleMesh): Mesh {
    return new this.wasm.Mesh({ numProp: 3, vertProperties: positions, triVerts: triangles });
  }

  private ofMesh(mesh: Mesh, what: string): Body {
    try {
      return this.keep(this.wasm.Manifold.ofMesh(mesh));
    } catch (error) {
      if (brokeDown(error)) throw error;
      throw new KernelFault(what, `not a closed solid (${codeOf(error)})`);
    }
  }

  /** A closed mesh as a body. Throws KernelFault where the mesh is not a closed 2-manifold or is inside out. */
  fromMesh(mesh: TriangleMesh, what: string, toleranceMm = tolerance): Body {
    const raw = this.fromExactMesh(mesh, what);
    return this.expectSolid(this.sound(raw.setTolerance(toleranceMm), what), what);
  }

  /** As fromMesh, but nothing is simplified: faces and points stay as given. Right for judging and repairing. */
  fromExactMesh(mesh: TriangleMesh, what: string): Body {
    const raw = this.ofMesh(this.inputOf(mesh), what);
    if (raw.status() !== 'NoError') throw new KernelFault(what, `the kernel reports ${raw.status()}`);
    return this.expectSolid(raw, what);
  }

  /** A JSCAD solid (convex planar polygons) as a body. */
  fromGeom3(geom: Geom3, what: string): Body {
    const positions: number[] = [];
    for (const { vertices } of geom.polygons) {
      for (let i = 2; i < vertices.length; i++) {
        positions.push(...point(vertices[0]), ...point(vertices[i - 1]), ...point(vertices[i]));
      }
    }
    const mesh = this.inputOf({
      positions: Float32Array.from(positions),
      triangles: Uint32Array.from({ length: positions.length / 3 }, (_, i) => i),
    });
    mesh.merge();
    const raw = this.ofMesh(mesh, what);
    return this.expectSolid(this.sound(raw.setTolerance(tolerance), what), what);
  }

  /** Outlines (counter-clockwise, holes clockwise) extruded from z = bottom to top. */
  extrude(
    polygons: readonly (readonly (readonly [number, number])[])[],
    bottom: number,
    top: number,
    what: string,
  ): Body {
    const body = this.keep(this.wasm.Manifold.extrude(this.profileOf(polygons), top - bottom));
    return this.expectSolid(this.sound(body.translate(0, 0, bottom), what), what);
  }

  /** The body's section by the plane z = height; empty where it misses. */
  slice(body: Body, height: number): Profile {
    return this.keep(body.slice(height));
  }

  /** Outlines as `extrude` takes them, as a profile. */
  profileOf(polygons: readonly (readonly (readonly [number, number])[])[]): Profile {
    return this.keep(this.wasm.CrossSection.ofPolygons(polygons as [number, number][][], 'NonZero'));
  }

  uniteProfiles(profiles: readonly Profile[]): Profile {
    return this.keep(this.wasm.CrossSection.union(profiles as Profile[]));
  }

  /** Area (mm2) two profiles share. */
  commonArea(a: Profile, b: Profile): number {
    return this.keep(a.intersect(b)).area();
  }

  /** A profile's outlines, counter-clockwise, holes clockwise. */
  outlinesOf(profile: Profile): (readonly [number, number])[][] {
    return profile.toPolygons();
  }

  /** A body's shadow on the plane z = 0. */
  shadow(body: Body): Profile {
    return this.keep(body.project());
  }

  /**
   * A profile `by` mm smaller all round, points within `tolerance` of the line between their neighbors left out.
   * Corners stay sharp; `round`, those that the edge moves away from become arcs, as by a disc rolled along it.
   */
  inset(profile: Profile, by: number, tolerance: number, round = false): Profile {
    const offset = round ? profile.offset(-by, 'Round', 2, arcSegments) : profile.offset(-by, 'Miter');
    return this.keep(this.keep(offset).simplify(tolerance));
  }

  /** Turns an (r, z) outline (counter-clockwise, r >= 0) about the z axis with `segments` sides, a vertex on +x. */
  revolve(outline: readonly (readonly [number, number])[], segments: number, what: string): Body {
    const profile = this.keep(this.wasm.CrossSection.ofPolygons([outline as [number, number][]], 'NonZero'));
    return this.expectSolid(this.sound(this.wasm.Manifold.revolve(profile, segments), what), what);
  }

  move(body: Body, matrix: Matrix4, what = 'moved body'): Body {
    return this.sound(body.transform(matrix as number[] as unknown as Mat4), what);
  }

  /** Union of any number of bodies in one batch. */
  unite(bodies: readonly Body[], what: string): Body {
    if (bodies.length === 1) return bodies[0] as Body;
    return this.expectSolid(this.sound(this.wasm.Manifold.union(bodies as Body[]), what), what);
  }

  /** `from` less all cutters, in the order given (small ones first is quickest). The result must not be empty. */
  subtract(from: Body, cutters: readonly Body[], what: string): Body {
    if (cutters.length === 0) return from;
    return this.expectSolid(this.sound(this.wasm.Manifold.difference([from, ...cutters]), what), what);
  }

  /** Common part; may be empty (ask `isEmpty()`). */
  intersect(bodies: readonly Body[], what: string): Body {
    return this.sound(this.wasm.Manifold.intersection(bodies as Body[]), what);
  }

  /** [inside the cutter, outside it] from one cut, so that both share the cut's vertices. Either may be empty. */
  split(body: Body, cutter: Body, what: string): [Body, Body] {
    const [inside, outside] = body.split(cutter);
    return [this.sound(inside as Body, what), this.sound(outside as Body, what)];
  }

  /** [above, below] the plane z = height; both share the cut. Either may be empty. */
  splitAt(body: Body, height: number, what: string): [Body, Body] {
    const [above, below] = body.splitByPlane([0, 0, 1], height);
    return [this.sound(above as Body, what), this.sound(below as Body, what)];
  }

  /** Separate pieces, in the kernel's (deterministic) order. */
  pieces(body: Body, what: string): Body[] {
    return body.decompose().map((piece) => this.sound(piece, what));
  }

  hull(points: readonly Vec3[], what: string): Body {
    const body = this.wasm.Manifold.hull(points as unknown as [number, number, number][]);
    return this.expectSolid(this.sound(body, what), what);
  }

  /** The hull of equal balls round all points: their hull grown by `radius`, every edge rounded. */
  roundedHull(points: readonly Vec3[], radius: number, segments: number, what: string): Body {
    const { positions: ball } = this.toMesh(this.keep(this.wasm.Manifold.sphere(radius, segments)));
    const round = points.flatMap(([x, y, z]) =>
      Array.from(
        { length: ball.length / 3 },
        (_, i): Vec3 => [x + ball[i * 3], y + ball[i * 3 + 1], z + ball[i * 3 + 2]],
      ),
    );
    return this.hull(round, what);
  }

  /** The surface where `inside(x, y, z)` changes sign (positive inside), on cells of `edge` mm within the box. */
  levelSet(inside: (at: Vec3) => number, min: Vec3, max: Vec3, edge: number, what: string): Body {
    const box = { min: [...min] as [number, number, number], max: [...max] as [number, number, number] };
    const body = this.wasm.Manifold.levelSet((p) => inside(p), box, edge, 0);
    return this.expectSolid(this.sound(body, what), what);
  }

  /** The body with edges collapsed; its surface may move by up to `movedBySimplify`. For pictures. */
  simplify(body: Body, toleranceMm: number): Body {
    return this.keep(body.simplify(toleranceMm));
  }

  /** Marks a body as one original, so that coplanar faces within tolerance may merge. */
  asOriginal(body: Body): Body {
    return this.keep(body.asOriginal());
  }

  /** The body's mesh, float32, indexed. Forces the kernel's lazy evaluation. */
  toMesh(body: Body): TriangleMesh {
    const mesh = body.getMesh();
    const stride = mesh.numProp;
    const count = mesh.vertProperties.length / stride;
    const positions = new Float32Array(count * 3);
    for (let v = 0; v < count; v++) {
      for (let axis = 0; axis < 3; axis++) positions[v * 3 + axis] = mesh.vertProperties[v * stride + axis];
    }
    return { positions, triangles: mesh.triVerts.slice() };
  }
}

const point = (v: readonly number[] | undefined): [number, number, number] =>
  v as unknown as [number, number, number];
