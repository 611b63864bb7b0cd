import { expandPlacements, nearestName, type Plan, placementsNamed } from '../../src/plan/index.ts';
import { outcomes, type PourWritten, type SeenWritten } from '../../src/trials/index.ts';
import { Unreadable } from '../exit.ts';

const fields = ['date', 'metal', 'mold', 'speed', 'shot', 'talc', 'changed', 'note'] as const;
type Field = (typeof fields)[number];

/** `speed=520 rpm`, `snail-1=short tip 20 %` and `others=good` as a pour; throws Unreadable with one plain line. */
export function readSettings(settings: readonly string[], plan: Plan, number: number): PourWritten {
  const texts: Partial<Record<Field, string>> = {};
  const cavities: Record<string, SeenWritten> = {};
  let pour = number;
  let others: 'good' | undefined;
  for (const setting of settings) {
    const [name, value] = split(setting);
    if (name === 'pour') pour = wholeNumber(value);
    else if (name === 'others') others = allGood(value);
    else if (isField(name)) texts[name] = value;
    else for (const id of idsNamed(name, plan)) cavities[id] = seenIn(value);
  }
  const seen = Object.keys(cavities).length > 0 && { cavities };
  // In the order of the columns.
  const { changed, note, ...settingsOf } = inOrder(texts);
  return {
    pour,
    ...settingsOf,
    ...seen,
    ...(others && { others }),
    ...(changed !== undefined && { changed }),
    ...(note !== undefined && { note }),
  };
}

function split(setting: string): [string, string] {
  const at = setting.indexOf('=');
  const [name, value] = [setting.slice(0, at).trim(), setting.slice(at + 1).trim()];
  if (at < 1 || value === '')
    throw new Unreadable(`--set ${setting}: write it like speed=520rpm or snail-1=short`);
  return [name, value];
}

function wholeNumber(value: string): number {
  if (!/^[1-9]\d{0,3}$/.test(value))
    throw new Unreadable(`--set pour=${value}: a pour has a whole number from 1`);
  return Number(value);
}

function allGood(value: string): 'good' {
  if (value !== 'good')
    throw new Unreadable(`--set others=${value}: only others=good; name those that are not`);
  return value;
}

const isField = (name: string): name is Field => fields.some((field) => field === name);

const inOrder = (texts: Partial<Record<Field, string>>): Partial<Record<Field, string>> =>
  Object.fromEntries(fields.flatMap((field) => (texts[field] === undefined ? [] : [[field, texts[field]]])));

/** A placement, a whole entry of them, or all. */
export function idsNamed(name: string, plan: Plan): string[] {
  const flat = expandPlacements(plan);
  const ids = placementsNamed(flat, name);
  if (ids.length > 0) return ids;
  const groups = [...new Set(flat.map(({ group }) => group))];
  const meant =
    groups.find((group) => group.startsWith(`${name}-`)) ??
    nearestName(name, [...fields, ...flat.map(({ id }) => id), ...groups]);
  const help =
    meant === undefined ? `; the plan places ${groups.join(', ') || 'nothing'}` : `; did you mean ${meant}?`;
  throw new Unreadable(`there is no ${name} in the plan${help}`);
}

/** `short`, `short tip`, `short tip 20 %`, `cold lap left`: what it came out as, where, and the share that is missing. */
export function seenIn(text: string): SeenWritten {
  const came = [...outcomes].find((word) => text === word || text.startsWith(`${word} `));
  if (came === undefined)
    throw new Unreadable(`\`${text}\` does not begin with one of ${outcomes.join(', ')}`);
  const rest = text.slice(came.length).trim();
  const [share] = rest.match(/\d+([.]\d+)? ?%$/) ?? [];
  const where = (share === undefined ? rest : rest.slice(0, -share.length)).trim();
  if (where === '' && share === undefined) return came;
  return { came, ...(where !== '' && { where }), ...(share !== undefined && { missing: share }) };
}
