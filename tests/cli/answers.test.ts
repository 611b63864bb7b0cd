import { beforeAll, describe, expect, it } from 'vitest';
import { describeCheck } from '../../cli/commands/check.ts';
import { openPlan } from '../../cli/plan-files.ts';
import { plain } from '../../cli/terminal.ts';
import { answersOf, masterSizes } from '../../src/export/index.ts';
import { reportSchema } from '../../src/export/report-schema.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { checkMold, readMold } from '../../src/pipeline/index.ts';
import { run, workbench } from './workbench.ts';

const bench = workbench();

/** Eight berries 0.45 in high over the plane, in halves of 1/2 in. */
const tall = `title: Ring of eight
process: rubber
disc: { diameter: 9 in, thickness: 1/2 in }
sprue: {}
parting: { surface: flat }
limits: { cover: 0.2 in }
masters:
  berry: { length: 3/4 in, width: 1/2 in, above: 0.45 in, below: 0.1 in }
placements:
  - { master: berry, ring: { count: 8, radius: 2.6 in } }
alloy: { density: 7300 kg/m3 }
fixture: { material: aluminum }
`;

async function checked(path: string) {
  const kernel = await loadKernel();
  const { plan, mold, findings } = await readMold(await openPlan(path), kernel);
  if (!plan || !mold) throw new Error(`no mold: ${findings.map(({ code }) => code)}`);
  const report = checkMold(mold, findings, kernel);
  const sizes = masterSizes(plan, mold, report);
  return { mold, report, at: (width: number) => describeCheck(mold, sizes, report, width) };
}

/** The lines of the answer to a question, as one. */
function answerTo(asks: string, text: string): string {
  const lines = text.split('\n');
  const from = lines.findIndex((line) => line.startsWith(asks));
  const next = lines.findIndex((line, i) => i > from && !line.startsWith('   '));
  return lines.slice(from, next).join(' ').replaceAll(/\s+/g, ' ');
}

let ring: Awaited<ReturnType<typeof checked>>;

beforeAll(async () => {
  ring = await checked(bench.put('tall.yaml', tall));
});

it.each([80, 100, 140])('no line of a report is wider than %d columns', (width) => {
  for (const line of plain(ring.at(width)).split('\n')) expect(line.length, line).toBeLessThanOrEqual(width);
});

describe('a ring of eight too tall', () => {
  it('is one finding with eight places', () => {
    const text = plain(ring.at(100));
    expect(ring.report.findings.filter(({ code }) => code === 'cover.thin')).toHaveLength(8);
    expect(text.match(/cover\.thin/g)).toHaveLength(1);
    expect(text).toMatch(/^warn {2}cover\.thin {2}berry-1 to 8 {2}/m);
    expect(text.replaceAll(/\s+/g, ' ')).toContain('8 places alike, the first at');
  });

  it('is told what it has beside what is wanted, and which stock holds it', () => {
    // By hand: 1/2 - 0.45 in are left over them; 0.45 + 0.2 in want 3/4 in, the well of 0.27 in and 0.2 in want 1/2 in.
    const answer = answerTo('Thick enough?', plain(ring.at(100)));
    expect(answer).toContain('doubtful');
    expect(answer).toMatch(
      /leaves 0\.050 in \(1\.27 mm\) in the upper half, where 0\.200 in \(5\.08 mm\) is wanted; 8 places: berry-1 to 8/,
    );
    expect(answer).toContain('1/2 in stock holds the lower half: 0.230 in (5.84 mm) of cover');
    expect(answer).toContain('3/4 in stock holds the upper half: 0.300 in (7.62 mm) of cover');
  });

  it('is not called checked where the plan leaves out what it takes', () => {
    const text = plain(ring.at(100));
    expect(answerTo('Cures through?', text)).toMatch(
      /not checked the plan does not say cure\.temperature and \d more/,
    );
    expect(answerTo('Comes apart?', text)).toBe('Comes apart? yes no undercut; 10.0 % allowed');
  });

  it('has the final size and mass of its master in the JSON', async () => {
    const { out } = await run('check', bench.path('tall.yaml'), '--json');
    const { masters, findings } = reportSchema.parse(JSON.parse(out));
    expect(findings.filter(({ code }) => code === 'cover.thin')).toHaveLength(8);
    const [berry] = masters ?? [];
    // 3/4 x 1/2 x 0.55 in: 0.20625 in3 of 7.3 g/cm3.
    expect(berry).toMatchObject({ id: 'berry', estimated: true });
    expect([berry.length, berry.width, berry.height]).toEqual(
      [19.05, 12.7, 13.97].map((mm) => expect.closeTo(mm, 4)),
    );
    expect((berry.massG?.value ?? 0) / (0.20625 * 16.387064 * 7.3)).toBeCloseTo(1, 4);
  });
});

it('what a plan makes less of is not answered with yes', () => {
  const findings = ring.report.findings.map((one) =>
    one.code === 'cover.thin'
      ? { ...one, severity: 'note' as const, changed: { from: 'warn' as const, reason: 'tried' } }
      : one,
  );
  const thick = (of: typeof ring.report) =>
    answersOf(ring.mold, of).find(({ asks }) => asks === 'Thick enough?')?.verdict;
  expect([thick(ring.report), thick({ ...ring.report, findings })]).toEqual(['doubtful', 'doubtful']);
  const none = ring.report.findings.filter(({ code }) => code !== 'cover.thin');
  expect(thick({ ...ring.report, findings: none })).toBe('yes');
  const stop = none.concat({
    ...findings[0],
    code: 'cover.through',
    severity: 'stop',
    values: {
      which: 'thing',
      measured: -1,
      limit: 5,
      half: 'upper',
      process: 'rubber',
      needed: 18,
      reach: 13,
      thickness: 12,
    },
  });
  expect(thick({ ...ring.report, findings: stop })).toBe('no');
});

it('colors only repeat what is said', () => {
  const colored = ring.at(100);
  expect(colored).toContain('\u001b[32myes\u001b[39m');
  expect(plain(colored)).toMatch(/^Comes apart\? +yes {2}/m);
});

describe('an order', () => {
  const ordered = `${tall}spin: { speed: 400, shot: 2 kg }
order: { pieces: { berry: 100 }, misruns: 10 % }
prices: { in: crowns, metal: 30 per kg }
`;

  it('is answered on top by pours and metal, with what is not known, and its prices are in the own word', async () => {
    const text = plain((await checked(bench.put('ordered.yaml', ordered))).at(100));
    // 100 / (8 x 0.9) = 13.9 pours.
    expect(answerTo('How many, how long?', text)).toMatch(
      /not checked ~14 pours, ~61\.729 lb \(28\.000 kg\) of metal poured, ~\d+\.\d % of it to melt again; the plan does not say/,
    );
    expect(text).toMatch(/metal of a casting {2,}~\d+\.\d\d crowns/);
  });

  it('is no question without one', () => {
    expect(ring.at(100)).not.toContain('How many');
  });

  it('how many pours an hour is said to be left out where a rubber plan has no pouring', () => {
    const heat = answerTo('Stands the heat?', plain(ring.at(100)));
    expect(heat).toContain('pours an hour: not checked, the plan does not say pouring');
    const besides = (mold: typeof ring.mold) =>
      answersOf(mold, ring.report).find(({ asks }) => asks === 'Stands the heat?')?.besides;
    expect(besides(ring.mold)).toBeDefined();
    expect(besides({ ...ring.mold, process: 'rigid' })).toBeUndefined();
    expect(besides({ ...ring.mold, placements: [] })).toBeUndefined();
    expect(besides({ ...ring.mold, bench: { ...ring.mold.bench, pouring: {} } })).toBeUndefined();
  });
});
