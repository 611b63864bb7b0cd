import type { TextPlace, UnitSystem } from '../findings/index.ts';
import type { Matrix4, SolidMeasures, TriangleMesh } from '../geometry/index.ts';
import type { Plan } from '../plan/index.ts';
import type { Bench } from './bench.ts';
import type { PartingSurface } from './parting-surface.ts';

export type Process = 'rubber' | 'rigid' | 'poured';

/** Everything placed and decided, in the mold frame: mm, rad, parting plane z = 0, lower half z < 0. Plain data. */
export interface Mold {
  readonly title: string;
  /** The system the plan is written in, which papers and reports show first. */
  readonly units: UnitSystem;
  readonly revision: string;
  /** Paper the shop sheet is printed on. */
  readonly paper: 'A4' | 'Letter';
  readonly process: Process;
  readonly disc: Disc;
  readonly sprue?: Sprue;
  readonly masters: readonly Master[];
  readonly placements: readonly Placement[];
  readonly bosses: readonly Boss[];
  /** Placements that get a build-up, in their order on the disc. */
  readonly supports: readonly Support[];
  readonly tabs: readonly Tab[];
  readonly notches: readonly Notch[];
  readonly channels: readonly Channel[];
  readonly ventPins: readonly VentPin[];
  readonly parting: PartingSurface;
  readonly fixture: Fixture;
  /** Materials the plan gives by their data sheets. Left out, none. */
  readonly materials?: readonly OwnMaterial[];
  readonly limits: Limits;
  /** How far cured rubber lets a boss move sideways, mm; undefined where the plan does not say. */
  readonly flex?: number;
  readonly bench: Bench;
  /** Codes of findings the plan takes more or less seriously than is usual. */
  readonly severity?: Plan['severity'];
  /**
   * Where in the plan's text each thing stands, by its id, and each of the plan's sections, by its name. Apart from the
   * things, so that nothing made from them, and no key it is cached under, hangs on lines.
   */
  readonly places: Readonly<Record<string, TextPlace>>;
}

/** Thicknesses of the halves; `label` is engraved on the outer faces. */
export interface Disc {
  readonly radius: number;
  readonly lower: number;
  readonly upper: number;
  readonly rimChamfer: number;
  readonly label: string;
}

/**
 * The center sprue form's shape. The shaft (radius `holeRadius` at the parting plane) narrows upward by the draft,
 * so that the form leaves the upper half through its parting face; the well (radius `wellRadius` at the parting
 * plane, narrowing downward) has a dome in its floor that turns the stream outward.
 */
export interface Sprue {
  readonly holeRadius: number;
  readonly draftRad: number;
  readonly wellRadius: number;
  readonly wellDepth: number;
  readonly domeRadius: number;
  readonly domeHeight: number;
  readonly fillet: number;
  /** How far the form and plug stand out of the upper half's outer face, to be gripped. */
  readonly grip: number;
  readonly puller?: Puller;
  /** Width across two flats on the grip. */
  readonly flats?: number;
  /** Depth of a flat along the shaft that lets air in behind the form. */
  readonly vent?: number;
  /** Whether it is parted at the parting plane; left out, one piece. */
  readonly pieces?: 'one' | 'two';
}

/** A hole from the top of the grip for the screw the form is pulled with, `diameter` wide as drilled or for an insert. */
export interface Puller {
  readonly screw: string;
  readonly diameter: number;
  readonly depth: number;
  /** Whether it is a pocket for a heat-set insert. */
  readonly insert?: true;
}

/**
 * A master after import: closed, oriented outward, in mm at the size the casting is to have, in the file's own axes.
 * `estimated` for stand-ins.
 */
export interface Master {
  readonly id: string;
  readonly kind: 'mesh' | 'stand-in';
  readonly mesh: TriangleMesh;
  readonly measures: SolidMeasures;
  /** How much larger than in its file it is made. Left out, as large. */
  readonly fileScale?: number;
  readonly massG?: number;
  /** What the master itself is made of, in the plan's words. */
  readonly material?: string;
  readonly estimated: boolean;
}

/** One master on the disc. `matrix` brings the master's mesh to the mold frame: shrink scale, lie, sink, turn, place. */
export interface Placement {
  readonly id: string;
  readonly master: string;
  readonly x: number;
  readonly y: number;
  readonly turnRad: number;
  /** How much larger than the casting the imprint is, by the shrinks. */
  readonly scale: number;
  readonly matrix: Matrix4;
  /** z of the lowest and highest point in the mold frame. */
  readonly lowest: number;
  readonly highest: number;
  /** Radius of the smallest circle round the silhouette, about (x, y). */
  readonly reach: number;
  readonly estimated: boolean;
}

/**
 * A registration boss standing at (x, y): its body below the parting plane in the lower half, its head above it in
 * the upper half. Lengths in mm.
 */
export interface Boss {
  readonly id: string;
  readonly kind: 'cap nut' | 'dome' | 'cone' | 'hexagon';
  readonly x: number;
  readonly y: number;
  readonly turnRad: number;
  /**
   * Trade size, such as `M8` or `3/8`, else the diameter of a dome or cone, the width across flats of a hexagon, in the
   * plan's system: `12` mm, `5/8 in`.
   */
  readonly size: string;
  /** Width across flats of a cap nut's or hexagon's root; 0 for domes and cones. */
  readonly acrossFlats: number;
  /** Depth of the root below the parting plane. */
  readonly rootDepth: number;
  /** Radius of the head at the parting plane; of a hexagon that of the circle in it, half its width across flats. */
  readonly headRadius: number;
  /** Height of the head above the parting plane. */
  readonly headHeight: number;
  /** How far a hexagon's flats lean inward above the parting plane. Left out, not at all. */
  readonly headDraftRad?: number;
  /** Clearance of the socket (rigid halves), square to its walls; 0 in rubber. */
  readonly clearance: number;
  /** Least lean from upright of the socket's walls (rigid halves). Left out, none. */
  readonly socketDraftRad?: number;
}

/** A build-up wished under a placement; `clearance` is the gap (mm) it leaves round masters. */
export interface Support {
  readonly placement: string;
  readonly clearance: number;
  /** What it is made of, where that is not the fixtures' material. */
  readonly material?: string;
}

/** A wedge in the parting line at the rim, wholly inside it: z from -height/2 to height/2, `length` inward. */
export interface Tab {
  readonly id: string;
  readonly angleRad: number;
  readonly width: number;
  readonly length: number;
  readonly height: number;
  /** Distance of the tab's outer corners from the rim. */
  readonly inset: number;
}

/** A V-notch across both halves at the rim: `width` along the rim, `depth` inward, through both thicknesses. */
export interface Notch {
  readonly id: string;
  readonly angleRad: number;
  readonly width: number;
  readonly depth: number;
}

/** Across a channel: half an ellipse, a trapezoid whose sides lean by the draft, or as a knife cuts it. */
export type Section =
  | { readonly kind: 'half-round' }
  | { readonly kind: 'V' }
  | { readonly kind: 'trapezoid'; readonly draftRad: number };

/** A point of a channel's path, mm, and how wide and deep the channel is there. */
export interface Station {
  readonly at: readonly [number, number];
  readonly width: number;
  readonly depth: number;
}

export type ChannelKind = 'runner' | 'gate' | 'pocket' | 'vent';

/**
 * A runner (metal from the well for several gates), gate (metal to a cavity), the blind pocket of a gate's slowing bend, or vent
 * (air, to the rim), following the parting surface along its path.
 */
export interface Channel {
  readonly id: string;
  readonly kind: ChannelKind;
  /** Whose it is; of a runner its own name. */
  readonly placement: string;
  /** From where metal or air comes to where it goes, at least two; straight between them. A ring ends where it begins. */
  readonly run: readonly Station[];
  /** How far its beginning and its end reach into what they open into, or past the rim, mm. */
  readonly laps: readonly [number, number];
  readonly section: Section;
  readonly half: 'lower' | 'upper';
  /** The channel it comes from or goes to instead of well or rim. */
  readonly opensInto?: string;
  /** A vent that the plan means to open into another. */
  readonly joins?: true;
}

/** A round hole through a half, for air. `depth` is how far its cavity begins from the outer face, `reach` how far the hole is cut, mm. */
export interface VentPin {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
  readonly half: 'lower' | 'upper';
  readonly depth: number;
  readonly reach: number;
}

/** A material by its data sheet. A plastic's heat limit is its deflection temperature under `loadPa`. */
export interface OwnMaterial {
  readonly name: string;
  readonly kind: 'resin' | 'plastic' | 'plaster';
  readonly heatLimitC: number;
  readonly loadPa?: number | undefined;
  readonly strengthPa: number;
  readonly densityKgM3: number;
  /** Of length. */
  readonly expansionPerK?: number | undefined;
  readonly poisson?: number | undefined;
  readonly conductivityWMK?: number | undefined;
  readonly heatJKgK?: number | undefined;
  readonly source: string;
}

/** How fixtures are made. `clearance` is the gap left round what fits loosely; `chordError` that of round shapes. */
export interface Fixture {
  readonly material: string;
  /** Whether the plan leaves the material out, so that it is only the usual one. */
  readonly assumed?: true;
  readonly clearance: number;
  readonly chordError: number;
  /** The making process's own shrink: loose fixtures are made larger by 1 / (1 - this). Left out, none. */
  readonly compensation?: number;
  /** Rigid halves: undercuts are filled toward the parting surface so that a rigid casting can leave. */
  readonly relieve: boolean;
  /** How much wider across the puller hole and the openings of jig, plates and stencils are drawn, mm. Left out, none. */
  readonly holeCompensation?: number;
  /** 45 degree chamfer of the edges flat fixtures stand on, mm. Left out, none. */
  readonly footChamfer?: number;
  /** Width of the registration jig's ring and its thickness, where the plan says, mm. */
  readonly jigWidth?: number;
  readonly jigThickness?: number;
  /** Thickness of the layout plate and of the nests, where the plan says, mm. */
  readonly plateThickness?: number;
  /** Kinds of solids that are made, by the names of the parts. Left out, all that the process has. */
  readonly make?: readonly string[];
  /** The smallest end mill rigid halves are machined with, where the plan says. */
  readonly cutter?: Cutter;
  /** The largest piece that can be made, where the plan says. */
  readonly bed?: Bed;
  /** What the process asks of shapes, where the plan names one: lengths mm, the overhang from upright. */
  readonly making?: {
    readonly process: 'FDM' | 'SLA' | 'machined';
    readonly overhangRad?: number;
    readonly leastFeature: number;
  };
}

/** An end mill: its end square or half a ball. Diameter in mm. */
export interface Cutter {
  readonly diameter: number;
  readonly kind: 'flat' | 'ball';
}

/**
 * Room of a printer or machine, mm; `joint` is the gap on each side of the joints of what is split to fit it,
 * `margin` what is left free along the edges.
 */
export interface Bed {
  readonly x: number;
  readonly y: number;
  /** Left out where the plan gives none. */
  readonly z?: number | undefined;
  readonly joint: number;
  readonly margin: number;
}

/** Least distances in mm, and what is at most allowed; all editable in the plan. */
export interface Limits {
  readonly cover: number;
  readonly wall: number;
  /** Between two channels. */
  readonly web: number;
  readonly cavityToWell: number;
  readonly cavityToBoss: number;
  readonly cavityToRim: number;
  readonly bossToRim: number;
  readonly falseSeat: number;
  /** Greatest mismatch of the halves at a cavity. */
  readonly mismatch: number;
  /** Greatest undercut that rubber is trusted to bend out of, as a share of the cavity's volume. */
  readonly undercutShare: number;
  /** Greatest free length of a bit with nothing under it, in thicknesses. */
  readonly slenderness: number;
}
