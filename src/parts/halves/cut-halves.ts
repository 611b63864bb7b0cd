import { boundsOf, moveMesh } from '../../geometry/index.ts';
import type { Body, Profile, Scope } from '../../kernel/index.ts';
import {
  isLoose,
  joinLooseComponents,
  type LooseComponent,
  type Mold,
  masterOf,
  partingPrism,
} from '../../mold/index.ts';
import { type HalfName, halfNames } from '../making/index.ts';
import {
  headBody,
  imprintBody,
  notchCutter,
  pocketBody,
  socketBody,
  tabRecess,
} from '../registration/index.ts';
import { sprueOpening } from '../sprue/index.ts';
import { flatCavities, wholeCavities } from './cavities.ts';
import { channelBody } from './channel-body.ts';
import { hasLooseComponents } from './loose-components.ts';
import { pinBody } from './pin-body.ts';
import { type DiscShape, discBody, markCutters, wholeDiscBody } from './plain-disc.ts';
import { reliefBodies } from './relief.ts';

/** What of a mold its halves depend on. */
export type HalvesInput = Pick<
  Mold,
  | 'process'
  | 'revision'
  | 'units'
  | 'disc'
  | 'sprue'
  | 'masters'
  | 'placements'
  | 'bosses'
  | 'tabs'
  | 'notches'
  | 'channels'
  | 'ventPins'
  | 'parting'
  | 'fixture'
>;

/** `marks`: index mark and label in the outer faces. */
export interface CutOptions {
  readonly marks: boolean;
}

const shapeOf = ({ disc, sprue, fixture, revision, units }: HalvesInput): DiscShape => ({
  disc,
  ...(sprue && { sprue }),
  chordError: fixture.chordError,
  revision,
  units,
});

export interface CutHalves {
  readonly lower: Body;
  readonly upper: Body;
  /** Pieces cut loose that neither half holds; they are left out of both. */
  readonly stuck: readonly LooseComponent[];
}

/**
 * Both halves in the mold frame, each in one piece: what the parting surface cuts loose from one (the rubber in a
 * bowl's hollow) goes over to the other. Throws KernelFault naming the half, placement or fixture that fails.
 */
export function cutHalves(scope: Scope, input: HalvesInput, options: CutOptions): CutHalves {
  const { parting } = input;
  const { lower, upper } = parting.flat
    ? flatHalves(scope, input, options)
    : curvedHalves(scope, input, options);
  const isInPieces = [lower, upper].some((body) => hasLooseComponents(scope.toMesh(body)));
  return isInPieces ? joinLooseComponents(scope, lower, upper) : { lower, upper, stuck: [] };
}

type Pair = Pick<CutHalves, HalfName>;

/** Each half is its own disc less what is on its side of z = 0: small cutters first, cavities last. */
function flatHalves(scope: Scope, input: HalvesInput, { marks }: CutOptions): Pair {
  const shape = shapeOf(input);
  const cavities = flatCavities(scope, input, input.process === 'rigid' && input.fixture.relieve);
  const shared = sharedCutters(scope, input);
  const make = (side: HalfName): Body => {
    const small = [
      ...shared,
      ...ownCutters(scope, side, input),
      ...(marks ? markCutters(scope, side, shape) : []),
    ];
    const disc = scope.unite([discBody(scope, side, shape), ...heads(scope, side, input)], `${side} half`);
    const plain = scope.subtract(disc, small, `${side} half`);
    const hollows = cavities(side);
    const done = scope.subtract(plain, hollows, `${side} half`);
    for (const hollow of hollows) scope.drop(hollow);
    return done;
  };
  return { lower: make('lower'), upper: make('upper') };
}

/** One cut of the whole disc by the parting prism gives both halves, so that they share the cut's vertices. */
function curvedHalves(scope: Scope, input: HalvesInput, { marks }: CutOptions): Pair {
  const shape = shapeOf(input);
  const level = -2 * input.disc.lower - input.disc.radius;
  const small = [
    ...sharedCutters(scope, input),
    ...(marks ? halfNames.flatMap((side) => markCutters(scope, side, shape)) : []),
  ];
  const disc = scope.subtract(wholeDiscBody(scope, shape), small, 'disc');
  const hollow = cutAway(scope, disc, wholeCavities(scope, input), 'disc with cavities');
  const prism = scope.fromExactMesh(partingPrism(input.parting, level), 'parting surface');
  const [below, above] = scope.split(hollow, prism, 'halves');
  for (const done of [hollow, prism]) scope.drop(done);
  const make = (side: HalfName): Body => {
    const body = scope.expectSolid(side === 'lower' ? below : above, `${side} half`);
    const cutters = [...ownCutters(scope, side, input), ...relief(scope, side, body, input)];
    const cut = cutAway(scope, body, cutters, `${side} half`);
    return scope.unite([cut, ...heads(scope, side, input)], `${side} half`);
  };
  return { lower: make('lower'), upper: make('upper') };
}

/** Body less cutters, all of which are freed: with many masters the kernel has no room for what is not needed. */
function cutAway(scope: Scope, body: Body, cutters: readonly Body[], what: string): Body {
  const left = scope.subtract(body, cutters, what);
  for (const done of [body, ...cutters]) if (done !== left) scope.drop(done);
  return left;
}

/** Cutters that go through the parting surface. */
function sharedCutters(scope: Scope, input: HalvesInput): Body[] {
  const { process, disc, tabs, notches, fixture } = input;
  return [
    ...tabs.map((tab) => tabRecess(scope, tab, disc.radius, process)),
    ...notches.map((notch) => notchCutter(scope, notch, disc, fixture.chordError)),
  ];
}

/** Cutters of one half alone: sprue opening, pockets, sockets, channels, vent pins. */
function ownCutters(
  scope: Scope,
  side: HalfName,
  { process, disc, sprue, bosses, channels, ventPins, parting, fixture }: HalvesInput,
): Body[] {
  const { chordError } = fixture;
  // What is a hole in the half stands out of a pattern plate.
  const holes = process === 'rigid' ? (fixture.holeCompensation ?? 0) : 0;
  const imprints = bosses
    .filter((boss) => isLoose(boss, process) && process !== 'rigid')
    .map((boss) => imprintBody(scope, side, boss, chordError));
  const fitted = bosses.filter((boss) => process === 'rigid' || !isLoose(boss, process));
  const registers =
    side === 'upper'
      ? fitted.map((boss) => socketBody(scope, boss, chordError, holes))
      : fitted.filter((boss) => isLoose(boss, process)).map((boss) => pocketBody(scope, boss, holes));
  const cut = channels
    .filter(({ half }) => half === side)
    .map((channel) => channelBody(scope, channel, parting));
  const opening = sprueOpening(scope, side, { disc, sprue, chordError });
  const pins = ventPins
    .filter(({ half }) => half === side)
    .map((pin) => pinBody(scope, pin, disc, { chordError, wider: holes }));
  return [...opening, ...imprints, ...registers, ...cut, ...pins];
}

function heads(scope: Scope, side: HalfName, { process, disc, bosses, fixture }: HalvesInput): Body[] {
  if (side === 'upper') return [];
  return bosses
    .filter((boss) => !isLoose(boss, process))
    .map((boss) => headBody(scope, boss, disc.lower, fixture.chordError));
}

/** Undercuts toward a curved parting surface, in one half. */
function relief(scope: Scope, side: HalfName, body: Body, input: HalvesInput): Body[] {
  const { process, fixture, placements, parting } = input;
  if (!(process === 'rigid' && fixture.relieve)) return [];
  const { min, max } = boundsOf(parting.sheet.positions);
  const end = side === 'lower' ? max[2] : min[2];
  const material = (profile: Profile, z: number): number => scope.commonArea(profile, scope.slice(body, z));
  return placements.flatMap((placement) => {
    const mesh = moveMesh(masterOf(input, placement).mesh, placement.matrix);
    const master = scope.fromExactMesh(mesh, placement.id);
    return reliefBodies(scope, master, side, end, material, placement.id);
  });
}
