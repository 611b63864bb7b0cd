import { catalogue, type Finding, type FindingCode, finding, type Severity } from '../findings/index.ts';
import { expandPlacements, placementsNamed } from './expand-placements.ts';
import { nearestName } from './nearest-name.ts';
import type { Plan } from './plan.ts';
import { type PlanPath, type PlanTree, sayPath } from './plan-tree.ts';

/** Names that mean something else where a placement can be named, or where a finding says what it is about. */
const reserved = ['all', 'auto', 'mold', 'plan', 'disc', 'sprue', 'parting'];

type Find = (code: FindingCode, says: string, path: PlanPath, remedy?: string) => void;

/** What no single section can tell: whether names are given once and are the names of something. */
export function crossCheck(plan: Plan, tree: PlanTree): Finding[] {
  const findings: Finding[] = [];
  const find: Find = (code, says, path, remedy) => {
    // A bad name of an entry is told at the name.
    const at = code === 'plan.unknown-key' ? tree.keySpotAt(path) : tree.spotAt(path);
    findings.push(finding(code, { subject: sayPath(path), says, at, ...(remedy && { remedy }) }));
  };
  mastersExist(plan, find);
  idsDiffer(plan, find);
  namedPlacementsExist(plan, find);
  sectorsGiven(plan, find);
  severitiesMayChange(plan, find);
  return findings;
}

function mastersExist(plan: Plan, find: Find): void {
  const known = Object.keys(plan.masters ?? {});
  for (const [i, { master }] of (plan.placements ?? []).entries()) {
    if (known.includes(master)) continue;
    find(
      'plan.unknown-id',
      `There is no master \`${master}\`; ${sayKnown(known)}.`,
      ['placements', i, 'master'],
      hint(master, known),
    );
  }
}

function idsDiffer(plan: Plan, find: Find): void {
  const seen = new Map<string, string>();
  const take = (id: string, path: PlanPath): void => {
    const other = seen.get(id);
    if (reserved.includes(id))
      find('plan.bad-id', `\`${id}\` has a meaning of its own and cannot be a name.`, path);
    else if (other) find('plan.duplicate-id', `\`${id}\` is already the name of ${other}.`, path);
    else seen.set(id, sayPath(path));
  };
  const entries = plan.placements ?? [];
  for (const placement of expandPlacements(plan)) {
    const i = entries.findIndex(({ at }) => at === placement.at);
    take(placement.id, entries[i].id === undefined ? ['placements', i] : ['placements', i, 'id']);
  }
  const fixtures = { tabs: plan.tabs, notches: plan.notches } as const;
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
  const known = [...new Set([...placements.flatMap(({ id, group }) => [group, id]), ...groups])];
  const lists = { supports: plan.supports, gates: plan.gates, vents: plan.vents };
  for (const [section, list] of Object.entries(lists)) {
    if (!list || typeof list === 'string') continue;
    for (const [i, item] of list.entries()) {
      for (const [k, name] of item.placements.entries()) {
        if (name === 'all' || groups.includes(name) || placementsNamed(placements, name).length > 0) continue;
        const says = `There is no placement \`${name}\`; ${sayKnown(known)}.`;
        find('plan.unknown-id', says, [section, i, 'placements', k], hint(name, known));
      }
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
  const says = 'This counts by sectors, and the plan does not divide the disc: give `sectors`.';
  for (const path of paths) find('plan.missing', says, path);
}

const byRule = (angle: unknown): boolean => typeof angle === 'object';

const gravity: Record<Severity, number> = { note: 0, warn: 1, stop: 2 };

function severitiesMayChange(plan: Plan, find: Find): void {
  const codes = Object.keys(catalogue);
  for (const [code, { severity }] of Object.entries(plan.severity ?? {})) {
    if (!isCode(code)) {
      find(
        'plan.unknown-key',
        `There is no finding \`${code.slice(0, 60)}\`.`,
        ['severity', code],
        hint(code, codes),
      );
    } else if (catalogue[code].safety && gravity[severity] < gravity[catalogue[code].severity]) {
      const says = `\`${code}\` protects people and cannot be lowered to \`${severity}\`.`;
      find('plan.out-of-range', says, ['severity', code, 'severity']);
    }
  }
}

const isCode = (text: string): text is FindingCode => Object.hasOwn(catalogue, text);

const hint = (written: string, known: readonly string[]): string | undefined => {
  const meant = nearestName(written, known);
  return meant && `Write \`${meant}\` if that is meant.`;
};

function sayKnown(known: readonly string[]): string {
  if (known.length === 0) return 'the plan has none';
  const shown = known.slice(0, 12).join(', ');
  return `the plan has ${shown}${known.length > 12 ? ', ...' : ''}`;
}
