import { type Finding, finding } from '../findings/index.ts';
import { expandPlacements, nearestName, type Plan, readBySchema, theFirst } from '../plan/index.ts';
import { type Pour, type TrialLog, trialLog } from './log-schema.ts';

export interface LogReading {
  /** Left out when a finding is a stop. */
  readonly log?: TrialLog;
  readonly findings: Finding[];
}

/**
 * Reads a trial log: bytes or text (UTF-8, YAML 1.2, at most 250 kB), beside its plan. Whatever is wrong with it is a
 * finding with line and column. A cavity counts as known when the plan has it, or an earlier pour says how its gate or
 * vent was cut. What quantities are written in is the log's own affair; values are in internal units (C, rpm, kg, mm).
 */
export function readLog(source: string | Uint8Array, fileName: string, plan: Plan): LogReading {
  const { value, read, findings } = readBySchema(source, fileName, trialLog);
  if (!value || !read) return { findings: theFirst(findings) };
  const { tree } = read;
  const at = (...path: PropertyKey[]) => tree.keySpotAt(['pours', ...path]);
  const placed = expandPlacements(plan).map(({ id }) => id);
  const known = new Set(placed);
  const lines = new Map<number, number>();
  const gone = new Set<string>();
  value.pours.forEach((pour, i) => {
    const line = lines.get(pour.pour);
    const here = tree.spotAt(['pours', i, 'pour']);
    if (line !== undefined)
      findings.push(
        finding('trials.pour-twice', { subject: 'trials', values: { pour: pour.pour, line }, at: here }),
      );
    else lines.set(pour.pour, here.line);
    for (const name of pour.cut?.flatMap(({ of }) => of) ?? []) known.add(name);
    for (const name of Object.keys(pour.cavities ?? {})) {
      if (!known.has(name)) findings.push(unknown(name, placed, at(i, 'cavities', name)));
      else if (!placed.includes(name)) gone.add(name);
    }
    findings.push(...contradictions(pour, (name) => at(i, 'cavities', name)));
  });
  if (gone.size > 0)
    findings.push(
      finding('trials.gone', { subject: 'trials', values: { names: [...gone], measured: gone.size } }),
    );
  const stopped = findings.some(({ severity }) => severity === 'stop');
  return { ...(!stopped && { log: value }), findings: theFirst(findings) };
}

function unknown(name: string, known: readonly string[], at: Finding['at']): Finding {
  const values = { name, meant: nearestName(name, known), known };
  return finding('trials.unknown-cavity', { subject: name, values, ...(at && { at }) });
}

function contradictions({ cavities }: Pour, at: (name: string) => Finding['at']): Finding[] {
  return Object.entries(cavities ?? {}).flatMap(([name, seen]) => {
    const fault = seen.find(({ came }) => came !== 'good')?.came;
    if (fault === undefined || !seen.some(({ came }) => came === 'good')) return [];
    const place = at(name);
    return [
      finding('trials.good-and-bad', { subject: name, values: { fault }, ...(place && { at: place }) }),
    ];
  });
}
