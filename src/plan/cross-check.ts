import {
  type CodeValues,
  catalogue,
  entryOf,
  type Finding,
  type FindingCode,
  findingWith,
  isMilder,
  type Severity,
} from '../findings/index.ts';
import { halfMaterial, heatRow, materialName } from '../tables/index.ts';
import { expandPlacements, placementsNamed } from './expand-placements.ts';
import { tooMany } from './limit-places.ts';
import { nearestName } from './nearest-name.ts';
import type { Plan, PlanChannel } from './plan.ts';
import { type PlanPath, type PlanTree, sayPath } from './plan-tree.ts';

/** Names that mean something else where a placement can be named, or where a finding says what it is about. */
const reserved = ['all', 'auto', 'mold', 'plan', 'disc', 'sprue', 'parting'];

type Find = <C extends FindingCode>(code: C, values: CodeValues<C>, path: PlanPath) => void;

/** What no single section can tell: whether names are given once and are the names of something. */
export function crossCheck(plan: Plan, tree: PlanTree): Finding[] {
  const findings: Finding[] = [];
  const find: Find = (code, values, path) => {
    // A bad name of an entry, and a field against another, is told at the name.
    const at =
      code === 'plan.unknown-key' || code === 'plan.contradicts' ? tree.keySpotAt(path) : tree.spotAt(path);
    findings.push(findingWith(code, values, { subject: sayPath(path), at }));
  };
  const over = tooMany(plan);
  for (const { values, path } of over) find('plan.too-many', values, path);
  // What the other checks hold against each other would take as long as what the limit is there for.
  if (over.length > 0) return findings;
  mastersExist(plan, find);
  idsDiffer(plan, find);
  namedPlacementsExist(plan, find);
  orderedMastersExist(plan, find);
  arrangedMastersExist(plan, find);
  namedEntriesExist(plan, find);
  namedWaysExist(plan, find);
  pathsReachTheirEnd(plan, find);
  slowingBendsTurn(plan, find);
  sectorsGiven(plan, find);
  materialsNamedApart(plan, find);
  severitiesMayChange(plan, find);
  coolingAgrees(plan, find, tree);
  meltingAgrees(plan, find, tree);
  return findings;
}

function mastersExist(plan: Plan, find: Find): void {
  const known = Object.keys(plan.masters ?? {});
  for (const [i, { master }] of (plan.placements ?? []).entries()) {
    if (known.includes(master)) continue;
    find('plan.unknown-id', unknownId('master', master, known), ['placements', i, 'master']);
  }
}

function orderedMastersExist(plan: Plan, find: Find): void {
  const known = Object.keys(plan.masters ?? {});
  for (const master of Object.keys(plan.order?.pieces ?? {}))
    if (!known.includes(master))
      find('plan.unknown-id', unknownId('master', master, known), ['order', 'pieces', master]);
}

function arrangedMastersExist(plan: Plan, find: Find): void {
  const known = Object.keys(plan.masters ?? {});
  for (const [master, { gate }] of Object.entries(plan.arrange?.pieces ?? {})) {
    const path = ['arrange', 'pieces', master];
    if (!known.includes(master)) find('plan.unknown-id', unknownId('master', master, known), path);
    else if (gate && 'named' in gate && !plan.masters?.[master]?.entry?.[gate.named]) {
      const places = Object.keys(plan.masters?.[master]?.entry ?? {});
      find('plan.unknown-id', unknownId('entry', gate.named, places), [...path, 'gate']);
    }
  }
  const { wall = plan.limits?.wall ?? 0, ample } = plan.arrange ?? {};
  if (typeof ample === 'number' && ample < wall)
    find('plan.choose-one', { which: 'ample' }, ['arrange', 'ample']);
}

function idsDiffer(plan: Plan, find: Find): void {
  const seen = new Map<string, string>();
  const take = (id: string, path: PlanPath): void => {
    const other = seen.get(id);
    if (reserved.includes(id)) find('plan.bad-id', { which: 'reserved', name: id }, path);
    else if (other) find('plan.duplicate-id', { name: id, other }, path);
    else seen.set(id, sayPath(path));
  };
  const entries = plan.placements ?? [];
  for (const placement of expandPlacements(plan)) {
    const i = entries.findIndex(({ at }) => at === placement.at);
    take(placement.id, entries[i].id === undefined ? ['placements', i] : ['placements', i, 'id']);
  }
  const fixtures = { tabs: plan.tabs, notches: plan.notches, runners: plan.runners } as const;
  for (const [section, items] of Object.entries(fixtures)) {
    for (const [i, { id }] of (items ?? []).entries()) if (id !== undefined) take(id, [section, i, 'id']);
  }
  for (const [i, { id }] of (plan.registration?.bosses ?? []).entries()) {
    if (id !== undefined) take(id, ['registration', 'bosses', i, 'id']);
  }
}

function namedPlacementsExist(plan: Plan, find: Find): void {
  const placements = expandPlacements(plan);
  // An entry that is left out on a disc of this size still has its name.
  const groups = (plan.placements ?? []).map(({ id, master }) => id ?? master);
  // What is still to be arranged has its name too.
  groups.push(...Object.keys(plan.arrange?.pieces ?? {}));
  const known = [...new Set([...placements.flatMap(({ id, group }) => [group, id]), ...groups])];
  const lists = { supports: plan.supports, gates: plan.gates, vents: plan.vents };
  for (const [section, list] of Object.entries(lists)) {
    if (!list || typeof list === 'string') continue;
    for (const [i, item] of list.entries()) {
      for (const [k, name] of item.placements.entries()) {
        if (name === 'all' || groups.includes(name) || placementsNamed(placements, name).length > 0) continue;
        find('plan.unknown-id', unknownId('placement', name, known), [section, i, 'placements', k]);
      }
    }
  }
  for (const [i, { where }] of (plan.ventPins ?? []).entries())
    for (const name of 'placements' in where ? where.placements : []) {
      if (name === 'all' || groups.includes(name) || placementsNamed(placements, name).length > 0) continue;
      find('plan.unknown-id', unknownId('placement', name, known), ['ventPins', i, 'placements']);
    }
}

/** A gate that leads out of a runner or another's, and a vent that leads into another's, name one each. */
function namedWaysExist(plan: Plan, find: Find): void {
  const placed = expandPlacements(plan).map(({ id }) => id);
  const runners = (plan.runners ?? []).map(({ id }) => id);
  const check = (name: string | undefined, known: readonly string[], path: PlanPath): void => {
    if (name === undefined || known.includes(name)) return;
    const kind = known.length > placed.length ? 'runner or placement' : 'placement';
    find('plan.unknown-id', unknownId(kind, name, known), path);
  };
  if (plan.gates && plan.gates !== 'straight')
    for (const [i, { from }] of plan.gates.entries())
      check(from, [...runners, ...placed], ['gates', i, 'from']);
  if (plan.vents && plan.vents !== 'straight')
    for (const [i, { to }] of plan.vents.entries())
      check(to && 'vent' in to ? to.vent : undefined, placed, ['vents', i, 'to']);
}

/** A slant is aimed at well or rim, and what ends blind is neither looked for nor bent. */
function pathsReachTheirEnd(plan: Plan, find: Find): void {
  for (const section of ['gates', 'vents'] as const) {
    const list = plan[section];
    if (!list || list === 'straight') continue;
    for (const [i, one] of list.entries()) {
      const name = aimless(one);
      if (name) find('plan.choose-one', { which: 'path end', name }, [section, i, 'path']);
    }
  }
}

/** A slowing bend is a turn at a way point: a gate that has none does not turn. */
function slowingBendsTurn({ gates }: Plan, find: Find): void {
  if (!gates || gates === 'straight') return;
  for (const [i, { slow, path }] of gates.entries())
    if (slow && !(typeof path === 'object' && 'through' in path))
      find('plan.missing', { which: 'turn' }, ['gates', i, 'slow']);
}

/** The path of a channel that its end does not go with. */
function aimless(one: PlanChannel): string | undefined {
  const end = 'from' in one ? one.from : 'to' in one ? one.to : undefined;
  const { path } = one;
  if (end === undefined || path === undefined || path === 'straight') return undefined;
  if (path !== 'routed' && 'slantRad' in path) return 'slant';
  if (typeof end === 'string' || 'vent' in end) return undefined;
  if (path === 'routed') return 'search';
  return 'arcRad' in path ? 'arc' : undefined;
}

/** A place of the outline that a gate or vent names is one of each master it leads to. */
function namedEntriesExist(plan: Plan, find: Find): void {
  const placements = expandPlacements(plan);
  for (const section of ['gates', 'vents'] as const) {
    const list = plan[section];
    if (!list || list === 'straight') continue;
    for (const [i, { entry, placements: names }] of list.entries()) {
      if (!entry || !('named' in entry)) continue;
      const ids = new Set(names.flatMap((name) => placementsNamed(placements, name)));
      const masters = new Set(placements.filter(({ id }) => ids.has(id)).map(({ master }) => master));
      const lacking = [...masters].find((master) => !plan.masters?.[master]?.entry?.[entry.named]);
      if (lacking === undefined) continue;
      const known = Object.keys(plan.masters?.[lacking]?.entry ?? {});
      find('plan.unknown-id', unknownId('entry', entry.named, known), [section, i, 'entry']);
    }
  }
}

/** What counts by sectors takes that the plan says how many there are. */
function sectorsGiven(plan: Plan, find: Find): void {
  if (plan.sectors) return;
  const lists = { placements: plan.placements, bosses: plan.registration?.bosses };
  const paths: PlanPath[] = Object.entries(lists).flatMap(([name, list]) =>
    (list ?? []).flatMap(({ where }, i) => {
      const entry = name === 'bosses' ? ['registration', name, i] : [name, i];
      if ('ring' in where) return 'perSector' in where.ring ? [[...entry, 'ring', 'perSector']] : [];
      return 'position' in where && byRule(where.position.angleRad) ? [[...entry, 'at', 'angle']] : [];
    }),
  );
  const rims = { tabs: plan.tabs, notches: plan.notches };
  for (const [name, list] of Object.entries(rims))
    for (const [i, { angleRad }] of (list ?? []).entries())
      if (byRule(angleRad)) paths.push([name, i, 'angle']);
  for (const path of paths) find('plan.missing', { which: 'sectors' }, path);
}

const byRule = (angle: unknown): boolean => typeof angle === 'object';

/** No sheet takes the place of a figure in the tables: those protect people. A blank in them may be filled. */
function materialsNamedApart(plan: Plan, find: Find): void {
  const seen = new Map<string, string>();
  for (const written of Object.keys(plan.materials ?? {})) {
    const path = ['materials', written];
    const name = materialName(written);
    const row = heatRow(written);
    const same = row?.limitC !== undefined && [row.name.toLowerCase(), ...row.words].includes(name);
    const other = seen.get(name);
    if (same || halfMaterial(written)) find('plan.bad-id', { which: 'material', name: written }, path);
    else if (other !== undefined)
      find('plan.duplicate-id', { name: written, other: `materials.${other}` }, path);
    seen.set(name, written);
  }
}

function severitiesMayChange(plan: Plan, find: Find): void {
  const codes = Object.keys(catalogue);
  for (const [code, { severity }] of Object.entries(plan.severity ?? {})) {
    if (!isCode(code)) {
      const meant = nearestName(code, codes);
      const values = { which: 'code', name: code.slice(0, 60), meant, known: [] } as const;
      find('plan.unknown-key', values, ['severity', code]);
    } else if (isLowered(code, severity)) {
      const values = { which: 'severity', given: code, to: severity } as const;
      find('plan.out-of-range', values, ['severity', code, 'severity']);
    }
  }
}

/** Fields that cannot both be true: told at the one, with the line of the other. */
function coolingAgrees({ cure }: Plan, find: Find, tree: PlanTree): void {
  if (cure?.cooling !== 'out' || cure.coolingConstantS === undefined) return;
  const { line } = tree.keySpotAt(['cure', 'cooling']);
  find('plan.contradicts', { which: 'cooling', line }, ['cure', 'coolingConstant']);
}

function meltingAgrees({ alloy }: Plan, find: Find, tree: PlanTree): void {
  const { solidusC, liquidusC } = alloy ?? {};
  if (solidusC === undefined || liquidusC === undefined || solidusC <= liquidusC) return;
  const { line } = tree.keySpotAt(['alloy', 'solidus']);
  find('plan.contradicts', { which: 'melting', line }, ['alloy', 'liquidus']);
}

const isCode = (text: string): text is FindingCode => Object.hasOwn(catalogue, text);

/** Whether a stop that protects people would become less. */
function isLowered(code: FindingCode, wanted: Severity): boolean {
  const { safety, severity } = entryOf(code);
  return safety === true && isMilder(wanted, severity);
}

/** Most names listed. */
const mostKnown = 12;

const unknownId = (
  kind: 'master' | 'placement' | 'entry' | 'runner or placement',
  name: string,
  known: readonly string[],
) => ({
  kind,
  name,
  known: known.slice(0, mostKnown),
  more: Math.max(0, known.length - mostKnown),
  meant: nearestName(name, known),
});
