import { CauseRow, causes, keyOf } from '../panels/findings.tsx';
import { mold, unread } from '../state/store.ts';

/** Why the plan could not be laid out, over whatever sheet is open; nothing where it could. */
export function Unread() {
  const why = unread.value.filter(({ severity }) => severity === 'stop');
  if (why.length === 0) return null;
  return (
    <section class="unread" aria-label="Why the plan is not laid out">
      <p>
        The plan cannot be laid out before this is put right.
        {mold.value && ' The picture is of what could be read, or of the plan before.'}
      </p>
      <ol class="findings">
        {causes(why).map((cause) => (
          <CauseRow key={keyOf(cause.worst)} cause={cause} />
        ))}
      </ol>
    </section>
  );
}
