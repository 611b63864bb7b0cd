import type { TextPlace, UnitSystem } from '../findings/index.ts';
import { type NumberWritten, numbersWritten } from './numbers-written.ts';
import type { PlanTree } from './plan-tree.ts';
import type { PlanValue } from './schema.ts';

/** A thing in the plan with its place in the text, so that later findings can name line and column. */
type Placed<T> = T extends unknown ? T & { readonly at: TextPlace } : never;

type Given<K extends keyof PlanValue> = NonNullable<PlanValue[K]>;
type Item<T> = T extends readonly (infer I)[] ? I : never;
/** The word or the list, its items with their places. */
type Listed<T> = Exclude<T, readonly unknown[]> | Placed<Item<T>>[];

export type PlanMaster = Placed<Given<'masters'>[string]>;
export type PlanPlacement = Placed<Item<Given<'placements'>>>;
export type PlanBoss = Placed<Item<NonNullable<Given<'registration'>['bosses']>>>;
type PlanTab = Placed<Item<Given<'tabs'>>>;
type PlanNotch = Placed<Item<Given<'notches'>>>;
export type PlanVentPin = Placed<Item<Given<'ventPins'>>>;
export type PlanRunner = Placed<Item<Given<'runners'>>>;
export type PlanChannel = Placed<Item<Given<'gates'>> | Item<Given<'vents'>>>;

type ItemSections =
  | 'masters'
  | 'placements'
  | 'arrange'
  | 'registration'
  | 'supports'
  | 'tabs'
  | 'notches'
  | 'runners'
  | 'gates'
  | 'vents'
  | 'ventPins'
  | 'disc'
  | 'sprue'
  | BenchSection;

/** What is done with the mold at the bench and on the machine. */
type BenchSection =
  | 'can'
  | 'closing'
  | 'machine'
  | 'rubber'
  | 'alloy'
  | 'spin'
  | 'cure'
  | 'pouring'
  | 'order'
  | 'prices';

/** Of the disc and the sprue form also each number as it was written. */
type Sized<T> = Placed<T> & { readonly written: readonly NumberWritten[] };

/** The bench sections a plan has. */
export type PlanBench = { readonly [K in BenchSection]?: Given<K> };

/**
 * Exactly what the plan file says, validated, in internal units (mm, rad, s, kg, Pa, C); what it does not say is
 * undefined. Plain data. A key's unit is in its name where it is not mm. `at` is a place in the text.
 */
export type Plan = Omit<PlanValue, ItemSections | 'units'> & {
  readonly [K in BenchSection]?: Placed<Given<K>>;
} & {
  readonly units: UnitSystem;
  readonly disc: Sized<PlanValue['disc']>;
  readonly sprue?: Sized<Given<'sprue'>>;
  readonly masters?: Readonly<Record<string, PlanMaster>>;
  readonly placements?: readonly PlanPlacement[];
  readonly arrange?: Placed<Given<'arrange'>>;
  readonly registration?: Omit<Given<'registration'>, 'bosses'> & { readonly bosses?: readonly PlanBoss[] };
  readonly supports?: Listed<Given<'supports'>>;
  readonly tabs?: readonly PlanTab[];
  readonly notches?: readonly PlanNotch[];
  readonly runners?: readonly PlanRunner[];
  readonly gates?: Listed<Given<'gates'>>;
  readonly vents?: Listed<Given<'vents'>>;
  readonly ventPins?: readonly PlanVentPin[];
};

/** Adds to every item of a checked plan its place in the text. */
export function placeInText(value: PlanValue, tree: PlanTree, units: UnitSystem): Plan {
  const one = <T extends object>(item: T, ...path: PropertyKey[]): Placed<T> =>
    ({ ...item, at: tree.spotAt(path) }) as Placed<T>;
  const all = <T extends object>(items: readonly T[], ...path: PropertyKey[]): Placed<T>[] =>
    items.map((item, i) => one(item, ...path, i));
  const named = <T extends object>(item: T, ...path: PropertyKey[]): Placed<T> =>
    ({ ...item, at: tree.keySpotAt(path) }) as Placed<T>;
  const sized = <T extends object>(item: T, section: string): Sized<T> => ({
    ...named(item, section),
    written: numbersWritten(tree, section),
  });
  const {
    masters,
    placements,
    arrange,
    registration,
    supports,
    tabs,
    notches,
    runners,
    gates,
    vents,
    ventPins,
    ...most
  } = value;
  const { disc, sprue, ...others } = most;
  const { can, closing, machine, rubber, alloy, spin, cure, pouring, order, prices, ...rest } = others;
  return {
    ...rest,
    units,
    disc: sized(disc, 'disc'),
    ...(can && { can: named(can, 'can') }),
    ...(closing && { closing: named(closing, 'closing') }),
    ...(machine && { machine: named(machine, 'machine') }),
    ...(rubber && { rubber: named(rubber, 'rubber') }),
    ...(alloy && { alloy: named(alloy, 'alloy') }),
    ...(spin && { spin: named(spin, 'spin') }),
    ...(cure && { cure: named(cure, 'cure') }),
    ...(pouring && { pouring: named(pouring, 'pouring') }),
    ...(order && { order: named(order, 'order') }),
    ...(prices && { prices: named(prices, 'prices') }),
    ...(sprue && { sprue: sized(sprue, 'sprue') }),
    ...(masters && { masters: mapValues(masters, (master, id) => named(master, 'masters', id)) }),
    ...(placements && { placements: all(placements, 'placements') }),
    ...(arrange && { arrange: named(arrange, 'arrange') }),
    ...(registration && {
      registration: withBosses(registration, (bosses) => all(bosses, 'registration', 'bosses')),
    }),
    ...(supports && { supports: supports === 'auto' ? supports : all(supports, 'supports') }),
    ...(tabs && { tabs: all(tabs, 'tabs') }),
    ...(notches && { notches: all(notches, 'notches') }),
    ...(runners && { runners: all(runners, 'runners') }),
    ...(gates && { gates: gates === 'straight' ? gates : all(gates, 'gates') }),
    ...(ventPins && { ventPins: all(ventPins, 'ventPins') }),
    ...(vents && { vents: vents === 'straight' ? vents : all(vents, 'vents') }),
  };
}

function withBosses(
  { bosses, ...rest }: Given<'registration'>,
  place: (bosses: NonNullable<Given<'registration'>['bosses']>) => PlanBoss[],
): NonNullable<Plan['registration']> {
  return bosses ? { ...rest, bosses: place(bosses) } : rest;
}

const mapValues = <T, U>(record: Record<string, T>, to: (value: T, key: string) => U): Record<string, U> =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key, to(value, key)]));
