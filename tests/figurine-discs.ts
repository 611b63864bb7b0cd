import { writeStl } from '../src/export/index.ts';
import type { Finding } from '../src/findings/index.ts';
import type { Kernel } from '../src/kernel/index.ts';
import { buildMold, readMold } from '../src/pipeline/index.ts';
import { judgeStl } from './judges.ts';
import { figurine, figurineKinds, randomOf } from './mesh/figurines.ts';
import { asMesh } from './mesh/rough-shapes.ts';

/** A plan, and its masters' files by name. */
export interface FigurineDisc {
  readonly plan: string;
  readonly files: ReadonlyMap<string, Uint8Array>;
}

/** Three figurines on a small disc, each of a kind and in a lie that follow from the seed. */
export function figurineDisc(seed: number): FigurineDisc {
  const random = randomOf(7919 * seed);
  const files = new Map<string, Uint8Array>();
  const masters: string[] = [];
  const placements: string[] = [];
  for (let i = 0; i < 3; i++) {
    const kind = figurineKinds[Math.floor(random() * figurineKinds.length)];
    const id = `${kind}-${i + 1}`;
    const shape = figurine(kind, 1000 * seed + i);
    files.set(`${id}.stl`, writeStl(asMesh(shape), id));
    const lie = `{ turnX: ${Math.floor(360 * random())}, turnY: ${Math.floor(360 * random())} }`;
    masters.push(`  ${id}: { file: ${id}.stl, unit: mm, lie: ${lie}, repair: { edge: 0.5 } }`);
    placements.push(
      `  - { master: ${id}, at: { radius: 42, angle: ${120 * i + Math.floor(20 * random())} } }`,
    );
  }
  const plan = `title: Figurines ${seed}
process: rubber
disc: { diameter: 150, thickness: 60 }
sprue: {}
masters:
${masters.join('\n')}
placements:
${placements.join('\n')}
`;
  return { plan, files };
}

export interface Judged {
  /** STL judged. */
  readonly files: number;
  readonly faults: readonly string[];
  readonly findings: readonly Finding[];
}

/** Builds the halves of a disc and has every STL judged; `put` writes a file and says where. */
export async function judgeDisc(
  { plan, files }: FigurineDisc,
  kernel: Kernel,
  put: (name: string, bytes: Uint8Array) => string,
): Promise<Judged> {
  const planBytes = new TextEncoder().encode(plan);
  const access = async (name: string) => {
    const bytes = files.get(name);
    return bytes ? { bytes, name, outside: false } : { fault: 'not there' };
  };
  const { mold, findings } = await readMold({ bytes: planBytes, name: 'plan.yaml', files: access }, kernel);
  if (!mold) return { files: 0, faults: [], findings };
  const { build } = await buildMold(mold, findings, { planBytes, version: '0' }, kernel, {
    only: ['lower-half', 'upper-half', 'halves'],
  });
  const faults = build.solids.flatMap(({ name, bytes }) =>
    judgeStl(put(name, bytes)).faults.map((fault) => `${name}: ${fault}`),
  );
  return { files: build.solids.length, faults, findings: build.report.findings };
}
