import type { FindingCode } from '../../findings/index.ts';
import { findings } from '../state/store.ts';
import { CauseRow, causes, keyOf } from './findings.tsx';

type Family<Code> = Code extends `${infer First}.${string}` ? First : never;

/** The findings whose codes begin with one of these words, worst first. */
export function FindingsAbout({ families }: { readonly families: readonly Family<FindingCode>[] }) {
  const about = findings.value.filter(({ code }) => families.some((one) => code.startsWith(`${one}.`)));
  if (about.length === 0) return <p class="remark">No finding about this.</p>;
  return (
    <ol class="findings">
      {causes(about).map((cause) => (
        <CauseRow key={keyOf(cause.worst)} cause={cause} />
      ))}
    </ol>
  );
}
